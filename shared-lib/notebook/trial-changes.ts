import type { Entry } from './entry.ts';
import { insert, put, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';
import type { trialEntryBodies } from './trial-entries.ts';

/** An entry about formulation trials or measurement studies. */
export type TrialEntry = Extract<Entry, { kind: keyof typeof trialEntryBodies }>;

/** What such an entry does to the tables. */
export function trialChanges(entry: TrialEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'trialSet.added':
      return [insert('trial_set', { ...entry.body, responses: '[]', factors: '[]', addedAt: occurredAt, addedBy: by, addedSeq: seq })];
    case 'responses.set':
      return [set('trial_set', { trialSetId: entry.body.trialSetId }, { responses: JSON.stringify(entry.body.responses) })];
    case 'factors.set':
      return [set('trial_set', { trialSetId: entry.body.trialSetId }, { factors: JSON.stringify(entry.body.factors) })];
    case 'trial.added': {
      const { trialId, trialSetId, ...trial } = entry.body;
      return [insert('trial', { trialId, trialSetId, ...columnsOf(trial), addedSeq: seq })];
    }
    case 'trial.changed': {
      const { trialId, reason: _inTheRecord, ...trial } = entry.body;
      return [set('trial', { trialId }, columnsOf(trial))];
    }
    case 'sample.linked':
      return [put('trial_sample', { ...entry.body, seq })];
    case 'sample.unlinked':
      return [remove('trial_sample', { trialId: entry.body.trialId, sampleId: entry.body.sampleId })];
    case 'study.recorded': {
      const { readings, results, ...study } = entry.body;
      return [
        insert('study', { methodVersion: '', ...study, readings: JSON.stringify(readings), results: JSON.stringify(results), recordedAt: occurredAt, recordedBy: by, seq }),
      ];
    }
  }
}

type TrialFields = Omit<Extract<TrialEntry, { kind: 'trial.changed' }>['body'], 'trialId' | 'reason'>;

function columnsOf({ name, control, components, factors, note }: TrialFields) {
  return { name, control: control ? 1 : 0, components: JSON.stringify(components), factors: JSON.stringify(factors), note } as const;
}
