import type { SearchHit } from '../../../../shared-lib/notebook/search-views.ts';
import { likePattern } from '../like-pattern.ts';
import { methodsNamed } from '../methods-named.ts';
import { MOST_COUNTED } from './rows-kind.ts';
import type { SearchKind } from './search-kind.ts';

const SAMPLE = String.raw`sampleId IN (SELECT sampleId FROM sample WHERE (code || ' ' || product || ' ' || job) LIKE ? ESCAPE '\')`;

interface FoundTest {
  testId: string;
  methodId: string;
  methodVersion: string;
  sampleId: string;
  state: string;
  startedAt: string;
}

/** Tests by the sample that they are made on and the title of their method; each condition goes by an index. */
export const tests: SearchKind = {
  title: 'Tests',
  find(notebook, words, limit) {
    const { store, methods } = notebook;
    const conditions = words.map((word) => {
      // As one list in one parameter: the statement stays the same, however many methods a word names.
      return [likePattern(word), JSON.stringify(methodsNamed(store, word))];
    });
    const found = `FROM test WHERE ${conditions.map(() => `(${SAMPLE} OR methodId IN (SELECT value FROM json_each(?)))`).join(' AND ')}`;
    const params = conditions.flat();
    const rows = store.all<FoundTest>(`SELECT testId, methodId, methodVersion, sampleId, state, startedAt ${found} ORDER BY startedSeq DESC LIMIT ?`, [...params, limit]);
    const total = rows.length < limit ? rows.length : store.one<{ total: number }>(`SELECT count(*) AS total FROM (SELECT 1 ${found} LIMIT ?)`, [...params, MOST_COUNTED + 1])!.total;
    const hits = rows.map((test): SearchHit => {
      const code = store.one<{ code: string }>('SELECT code FROM sample WHERE sampleId = ?', [test.sampleId])?.code ?? '';
      return {
        key: test.testId,
        title: `${methods.find(test.methodId, test.methodVersion)?.shortTitle ?? test.methodId} on ${code}`,
        detail: `${test.state} · ${test.startedAt.slice(0, 10)}`,
        screen: 'bench-sheet',
        id: test.testId,
      };
    });
    return { total: Math.min(total, MOST_COUNTED), many: total > MOST_COUNTED, hits };
  },
};
