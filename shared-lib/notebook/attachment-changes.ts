import type { attachmentEntryBodies } from './attachment-entries.ts';
import type { Entry } from './entry.ts';
import { insert, put, remove, set } from './table-change.ts';
import type { ChangeOf, TableName } from './tables.ts';

/** An entry about a file that belongs to something, or a photograph that is measured. */
export type AttachmentEntry = Extract<Entry, { kind: keyof typeof attachmentEntryBodies }>;

/** What such an entry does to the tables. */
export function attachmentChanges(entry: AttachmentEntry): ChangeOf<TableName>[] {
  const { seq, by, occurredAt } = entry;
  switch (entry.kind) {
    case 'attachment.linked':
      return [put('attachment_link', { ...entry.body, linkedAt: occurredAt, linkedBy: by, seq })];
    case 'attachment.unlinked': {
      const { sha256, attachedTo, attachedId } = entry.body;
      return [remove('attachment_link', { attachedTo, attachedId, sha256 })];
    }
    case 'photo.measured': {
      const { reading, reason, ...photo } = entry.body;
      const { testId, row, key, photoId } = photo;
      return [
        insert('photo', { ...photo, reading: JSON.stringify(reading), seq }),
        put('bench_row', { testId, row }),
        // A reason is only asked for when the cell had a photograph before.
        put('reading', { testId, row, key, value: photoId, typed: '', seq }, { corrections: reason === '' ? 0 : 1 }),
        set('test', { testId, state: 'finished' }, { state: 'outdated' }),
      ];
    }
  }
}

/** The test or sample that an entry about a link speaks of. */
export function attachedAbout({ body: { attachedTo, attachedId } }: Exclude<AttachmentEntry, { kind: 'photo.measured' }>): { testId?: string; sampleId?: string } {
  return attachedTo === 'test' ? { testId: attachedId } : attachedTo === 'sample' ? { sampleId: attachedId } : {};
}
