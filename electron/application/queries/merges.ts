import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

/** Newest first. */
export function listMerges(store: NotebookStore): Tables['merge'][] {
  return store.all<Tables['merge']>('SELECT * FROM merge ORDER BY seq DESC');
}

/** In the order in which the first of both entries stands in the record. */
export function conflictsOfMerge(store: NotebookStore, mergeId: string): Tables['merge_conflict'][] {
  return store.all<Tables['merge_conflict']>(
    `SELECT merge_conflict.* FROM merge_conflict JOIN entry ON entry.id = merge_conflict.here WHERE mergeId = ? ORDER BY entry.seq, there`,
    [mergeId],
  );
}

/** The bench that an entry was brought in from; '' for one of this notebook's own. */
export function benchOf(store: NotebookStore, seq: number): string {
  return runOf(store, seq)?.bench ?? '';
}

/**
 * Which earlier entries were known at the bench where entry `seq` was made, when it was made: not those that stand between
 * it and where its chain parted from this one.
 */
export function knownTo(store: NotebookStore, seq: number): (earlier: number) => boolean {
  const unknown: { after: number; before: number }[] = [];
  for (let run = runOf(store, seq), at = seq; run; at = run.forkSeq, run = runOf(store, at)) {
    // A bench that took this one in before knew what was here.
    if (store.one(`SELECT 1 FROM entry WHERE kind = 'notebook.merged' AND seq >= ? AND seq < ?`, [run.firstSeq, at])) break;
    unknown.push({ after: run.forkSeq, before: run.firstSeq });
  }
  return (earlier) => unknown.every(({ after, before }) => earlier <= after || earlier >= before);
}

function runOf(store: NotebookStore, seq: number): Tables['merge_run'] | undefined {
  const run = store.one<Tables['merge_run']>('SELECT * FROM merge_run WHERE firstSeq <= ? ORDER BY firstSeq DESC LIMIT 1', [seq]);
  return run && seq <= run.lastSeq ? run : undefined;
}
