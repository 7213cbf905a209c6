import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { EntryNames } from '../../../shared-lib/notebook/entry-names.ts';
import { describeEntry } from '../../../shared-lib/notebook/entry-sentence.ts';
import type { EntryLine, RecordView } from '../../../shared-lib/notebook/views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { correctionOf } from '../corrections-of-test.ts';
import { entryNames } from '../entry-names.ts';
import { countEntries, findEntries, type FoundEntry } from '../queries/entries.ts';
import { nameOf } from '../queries/people.ts';
import type { Workplace } from '../workplace.ts';

/** The record, newest first, as far as it matches. */
export function recordList({ notebook: { store, methods } }: Workplace, input: ParsedInput<'record.list'>): RecordView {
  const names = entryNames(store, methods);
  return {
    ...countEntries(store, input),
    entries: findEntries(store, input, input.limit, input.offset).map((found) => entryLine(store, names, found)),
  };
}

function entryLine(store: NotebookStore, names: EntryNames, { entry, testId, sampleId }: FoundEntry): EntryLine {
  const { seq, id, recordedAt, occurredAt, by, kind, hash } = entry;
  const line = { seq, id, recordedAt, occurredAt, by: nameOf(store, by), kind, sampleId, testId, hash };
  try {
    return { ...line, text: describeEntry(entry, names).text, correction: correctionOf(store, names, entry) };
  } catch {
    // Somebody changed it by hand; the rest of the record must still be seen.
    return { ...line, text: 'This entry cannot be read any more.', correction: null };
  }
}
