import type { Entry } from './entry.ts';
import type { MergeConflict, mergeEntryBodies } from './merge-entries.ts';
import { insert, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about notebooks that are brought together. */
export type MergeEntry = Extract<Entry, { kind: keyof typeof mergeEntryBodies }>;

/** What such an entry does to the tables, besides saying again what was taken (`saidAgain`). */
export function mergeChanges(entry: MergeEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  if (entry.kind === 'conflict.settled') {
    const { mergeId, here, there, reason } = entry.body;
    return [set('merge_conflict', { mergeId, here, there }, { settledReason: reason, settledAt: occurredAt, settledBy: by })];
  }
  const { mergeId, bench, title, laboratory, runs, conflicts, outdated } = entry.body;
  const count = runs.reduce((sum, run) => sum + run.count, 0);
  return [
    insert('merge', { mergeId, bench, title, laboratory, count, mergedAt: occurredAt, mergedBy: by, seq }),
    // What a merge at another bench brought in there has come here in its own way.
    ...(entry.sealedSeq === undefined ? runRows(entry.body.runs, seq - count) : []),
    ...conflicts.map(({ here, there, taken, mark }) =>
      insert('merge_conflict', { mergeId, here, there, taken, mark: mark?.code ?? null, settledReason: null, settledAt: null, settledBy: null }),
    ),
    ...conflicts.flatMap(({ mark }) => (mark ? [marked(mark)] : [])),
    ...outdated.map((testId) => set('test', { testId, state: 'finished' }, { state: 'outdated' })),
  ];
}

function runRows(runs: Extract<MergeEntry, { kind: 'notebook.merged' }>['body']['runs'], firstSeq: number): ChangeOf<'merge_run'>[] {
  let next = firstSeq;
  return runs.map(({ bench, forkSeq, count }) => {
    const first = next;
    next += count;
    return insert('merge_run', { firstSeq: first, lastSeq: next - 1, forkSeq, bench });
  });
}

function marked({ of, id, code }: NonNullable<MergeConflict['mark']>): ChangeOf<TableName> {
  switch (of) {
    case 'sample':
      return set('sample', { sampleId: id }, { code });
    case 'lot':
      return set('lot', { lotId: id }, { code });
    case 'report':
      return set('report', { reportId: id }, { number: code });
    case 'person':
      return set('person', { personId: id }, { initials: code });
  }
}
