import type { MergeEntry } from './merge-changes.ts';
import { ended } from './sentence.ts';

/** An entry about notebooks that are brought together, in one sentence. */
export function mergeSentence(entry: MergeEntry): string {
  if (entry.kind === 'conflict.settled') return `Settled a conflict of two benches: what was taken stands, because ${ended(entry.body.reason)}`;
  const { bench, title, runs, conflicts } = entry.body;
  const count = runs.reduce((sum, run) => sum + run.count, 0);
  const what = `${count} ${count === 1 ? 'entry' : 'entries'} of ${bench} (“${title}”)`;
  const open = conflicts.length === 0 ? 'nothing contradicted' : `${conflicts.length} ${conflicts.length === 1 ? 'conflict' : 'conflicts'} to settle`;
  return `Brought in ${what}: ${open}.`;
}
