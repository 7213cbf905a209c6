import type { NotebookStore } from '../../store/notebook-store.ts';
import { likePattern } from './like-pattern.ts';
import { methodsNamed } from './methods-named.ts';

const SAMPLE = String.raw`sampleId IN (SELECT sampleId FROM sample WHERE (code || ' ' || product || ' ' || job) LIKE ? ESCAPE '\')`;

/** A condition on `test`: each word in its sample's code, product or job, or in the title of its method. Each goes by an index. */
export function testsNamed(store: NotebookStore, words: readonly string[]): { where: string; parameters: string[] } {
  return {
    where: words.map(() => `(${SAMPLE} OR methodId IN (SELECT value FROM json_each(?)))`).join(' AND ') || 'TRUE',
    // As one list in one parameter: the statement stays the same, however many methods a word names.
    parameters: words.flatMap((word) => [likePattern(word), JSON.stringify(methodsNamed(store, word))]),
  };
}
