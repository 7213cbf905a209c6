import type { Entry, EntryBody } from '../../shared-lib/notebook/entry.ts';
import type { EntryNames } from '../../shared-lib/notebook/entry-names.ts';
import { describeEntry } from '../../shared-lib/notebook/entry-sentence.ts';
import type { ReadingsTable } from '../../shared-lib/report/content.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { entryNames } from './entry-names.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { entriesOfTest } from './queries/entries.ts';
import { nameOf } from './queries/people.ts';

/** Every correction of a test in the order made, as the report's appendix lists them. */
export function correctionsOfTest({ store, methods }: OpenNotebook, testId: string): ReadingsTable['corrections'] {
  const names = entryNames(store, methods);
  return entriesOfTest(store, testId).flatMap((entry) => {
    const correction = correctionOf(store, names, entry);
    return correction ? [{ where: where(names, entry), ...correction, by: nameOf(store, entry.by), at: entry.occurredAt }] : [];
  });
}

/** Before, after and reason in words; `null` for an entry that corrects nothing. A trace or photograph in place of another corrects it. */
export function correctionOf(store: NotebookStore, names: EntryNames, entry: Entry): { before: string; after: string; reason: string } | null {
  if (entry.kind === 'trace.read') return fileCorrection(store, names, entry.seq, entry.body, 'trace', entry.body.traceId);
  if (entry.kind === 'photo.measured') return fileCorrection(store, names, entry.seq, entry.body, 'photo', entry.body.photoId);
  return describeEntry(entry, names).correction;
}

type FileCell = Pick<EntryBody<'trace.read'>, 'testId' | 'row' | 'key' | 'reason'>;

function fileCorrection(store: NotebookStore, names: EntryNames, seq: number, { testId, row, key, reason }: FileCell, table: 'trace' | 'photo', value: string) {
  if (reason === '') return null;
  const before = store.one<{ value: string }>(
    `SELECT ${table}Id AS value FROM ${table} WHERE testId = ? AND "row" = ? AND key = ? AND seq < ? ORDER BY seq DESC LIMIT 1`,
    [testId, row, key, seq],
  );
  return { before: before ? names.value(testId, key, before.value) : 'nothing', after: names.value(testId, key, value), reason };
}

function where(names: EntryNames, entry: Entry): string {
  if (!('key' in entry.body)) return '';
  const { testId, key } = entry.body;
  const field = names.field(testId, key);
  return 'row' in entry.body ? `${names.row(testId, entry.body.row)}, ${field}` : field;
}
