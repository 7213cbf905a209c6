import type { Entry } from './entry.ts';
import type { inHouseEntryBodies } from './in-house-entries.ts';
import { insert, put, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about an in-house method. */
export type InHouseEntry = Extract<Entry, { kind: keyof typeof inHouseEntryBodies }>;

/** What such an entry does to the tables. */
export function inHouseChanges(entry: InHouseEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'habit.described': {
      const { methodId, habit } = entry.body;
      return [put('habit', { methodId, title: habit.title, habit: JSON.stringify(habit), describedAt: occurredAt, describedBy: by, seq })];
    }
    case 'inHouseMethod.added': {
      const { methodId, version } = entry.body;
      return [
        insert('in_house_method', { methodId, version, title: entry.body.written.title, retired: 0, retiredReason: '', addedSeq: seq }),
        versionRow(entry, [], ''),
      ];
    }
    case 'inHouseMethod.versioned': {
      const { methodId, version, written, changes, reason } = entry.body;
      return [set('in_house_method', { methodId }, { version, title: written.title, retired: 0, retiredReason: '' }), versionRow(entry, changes, reason)];
    }
    case 'inHouseMethod.retired':
      return [set('in_house_method', { methodId: entry.body.methodId }, { retired: 1, retiredReason: entry.body.reason })];
  }
}

function versionRow({ seq, by, occurredAt, body }: Extract<InHouseEntry, { kind: 'inHouseMethod.added' | 'inHouseMethod.versioned' }>, changes: string[], reason: string): ChangeOf<TableName> {
  const { methodId, version, written, origin } = body;
  return insert('in_house_version', {
    methodId,
    version,
    written: JSON.stringify(written),
    origin: origin && JSON.stringify(origin),
    changes: JSON.stringify(changes),
    reason,
    writtenAt: occurredAt,
    writtenBy: by,
    seq,
  });
}
