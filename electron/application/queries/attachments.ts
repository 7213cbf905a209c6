import type { AttachedTo } from '../../../shared-lib/notebook/attachment-entries.ts';
import type { AttachmentCounts, AttachmentLine } from '../../../shared-lib/notebook/attachment-views.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { nameOf } from './people.ts';

/**
 * Files of one thing, newest first; of a test also the photographs that its cells measure. A file that was put there and is
 * measured as well is one line. Their content stays in the notebook.
 */
export function listAttachments(store: NotebookStore, attachedTo: AttachedTo, attachedId: string): AttachmentLine[] {
  const linked = store.all<Omit<AttachmentLine, 'measured'>>(
    `SELECT sha256, name, mediaType, size, caption, linkedAt, linkedBy FROM attachment_link JOIN attachment USING (sha256)
     WHERE attachedTo = ? AND attachedId = ? ORDER BY seq DESC`,
    [attachedTo, attachedId],
  );
  const measured = attachedTo === 'test' ? measuredIn(store, attachedId) : [];
  const [ofMeasured, ofLinked] = [measured, linked].map((lines) => new Set(lines.map(({ sha256 }) => sha256))) as [Set<string>, Set<string>];
  return [...measured.filter(({ sha256 }) => !ofLinked.has(sha256)), ...linked.map((line) => ({ ...line, measured: ofMeasured.has(line.sha256) }))].map((line) => ({
    ...line,
    linkedBy: nameOf(store, line.linkedBy),
  }));
}

/** Photographs that stand in a cell now; one that was replaced stays in the record alone. */
function measuredIn(store: NotebookStore, testId: string): AttachmentLine[] {
  return store
    .all<Omit<AttachmentLine, 'measured'>>(
      `SELECT attachment.sha256, name, mediaType, size, '' AS caption, entry.occurredAt AS linkedAt, entry."by" AS linkedBy
       FROM photo JOIN reading ON reading.testId = photo.testId AND reading."row" = photo."row" AND reading.key = photo.key AND reading.value = photo.photoId
       JOIN attachment ON attachment.sha256 = photo.sha256 JOIN entry ON entry.seq = photo.seq
       WHERE photo.testId = ? GROUP BY attachment.sha256 ORDER BY photo.seq`,
      [testId],
    )
    .map((line) => ({ ...line, measured: true }));
}

export function countAttachments(store: NotebookStore): AttachmentCounts {
  return store.all('SELECT attachedTo, attachedId, count(*) AS files FROM attachment_link GROUP BY attachedTo, attachedId');
}

export function findAttachment(store: NotebookStore, sha256: string): Tables['attachment'] | undefined {
  return store.one<Tables['attachment']>('SELECT * FROM attachment WHERE sha256 = ?', [sha256]);
}

export function isLinked(store: NotebookStore, attachedTo: AttachedTo, attachedId: string, sha256: string): boolean {
  return store.one('SELECT 1 FROM attachment_link WHERE attachedTo = ? AND attachedId = ? AND sha256 = ?', [attachedTo, attachedId, sha256]) !== undefined;
}

const tableOf = { sample: ['sample', 'sampleId'], lot: ['lot', 'lotId'], material: ['material', 'materialId'], test: ['test', 'testId'], method: ['in_house_method', 'methodId'], instrument: ['instrument', 'instrumentId'], fluid: ['fluid', 'fluidId'] } as const;

export function isThere(store: NotebookStore, attachedTo: AttachedTo, attachedId: string): boolean {
  const [table, key] = tableOf[attachedTo];
  return store.one(`SELECT 1 FROM ${table} WHERE ${key} = ?`, [attachedId]) !== undefined;
}
