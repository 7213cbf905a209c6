import type { Entry } from './entry.ts';
import { insert, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';
import type { witnessEntryBodies } from './witness-entries.ts';

/** An entry about work that was witnessed or withdrawn. */
export type WitnessEntry = Extract<Entry, { kind: keyof typeof witnessEntryBodies }>;

/** What such an entry does to the tables. */
export function witnessChanges(entry: WitnessEntry): ChangeOf<TableName>[] {
  switch (entry.kind) {
    case 'work.witnessed': {
      const { signature, ...page } = entry.body;
      return [insert('witness', { seq: entry.seq, ...page, ...signature })];
    }
    case 'test.withdrawn':
      return [set('test', { testId: entry.body.testId }, { withdrawn: entry.body.reason })];
  }
}
