import type { Entry } from './entry.ts';
import type { sampleEntryBodies } from './sample-entries.ts';
import { onlyChanged } from './only-changed.ts';
import { insert, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about a sample beyond its first. */
export type SampleEntry = Extract<Entry, { kind: keyof typeof sampleEntryBodies }>;

/** What such an entry does to the tables. */
export function sampleChanges(entry: SampleEntry): ChangeOf<TableName>[] {
  const { sampleId } = entry.body;
  switch (entry.kind) {
    case 'sample.changed': {
      const { lotIds, ...sample } = onlyChanged(entry.body.before, entry.body.after);
      return [
        ...(Object.keys(sample).length > 0 ? [set('sample', { sampleId }, sample)] : []),
        ...(lotIds ? [remove('sample_lot', { sampleId }), ...lotIds.map((lotId, place) => insert('sample_lot', { sampleId, lotId, place }))] : []),
      ];
    }
    case 'sample.retired':
      return [set('sample', { sampleId }, { retiredAt: entry.occurredAt, retiredReason: entry.body.before ?? entry.body.reason })];
    case 'sample.returned':
      return [set('sample', { sampleId }, { retiredAt: null, retiredReason: '' })];
  }
}
