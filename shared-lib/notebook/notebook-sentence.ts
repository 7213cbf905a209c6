import type { NotebookEntry } from './notebook-changes.ts';
import { because, type EntrySentence } from './sentence.ts';

/** An entry about the notebook itself in one sentence. */
export function notebookSentence({ body: { before, after, reason } }: NotebookEntry): EntrySentence {
  const correction = { before: named(before), after: named(after), reason };
  return { text: `Changed the notebook from ${correction.before} to ${correction.after}${because(reason)}`, correction: reason === '' ? null : correction };
}

function named({ title, laboratory }: { title: string; laboratory: string }): string {
  return `“${title}”${laboratory ? ` (${laboratory})` : ''}`;
}
