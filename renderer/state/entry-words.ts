import type { EntryKind } from '../../shared-lib/notebook/entry.ts';

/** The kinds of entry as the filter of the Record names them. */
export const entryWords: Record<EntryKind, string> = {
  'notebook.created': 'notebook begun',
  'person.added': 'person added',
  'material.added': 'material added',
  'lot.added': 'lot added',
  'sample.added': 'sample added',
  'test.started': 'test started',
  'limits.set': 'limits set',
  'condition.entered': 'condition entered',
  'condition.corrected': 'condition corrected',
  'reading.entered': 'reading entered',
  'reading.corrected': 'reading corrected',
  'row.voided': 'row voided',
  'row.restored': 'row restored',
  'row.remarked': 'row remarked',
  'attachment.added': 'file attached',
  'trace.read': 'trace read',
  'test.finished': 'test finished',
  'report.issued': 'report issued',
};
