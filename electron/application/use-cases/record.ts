import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { RecordView } from '../../../shared-lib/notebook/record-view.ts';
import { entryLine } from '../entry-line.ts';
import { entryNames } from '../entry-names.ts';
import { countEntries, findEntries } from '../queries/entries.ts';
import type { Workplace } from '../workplace.ts';

/** The record, newest first, as far as it matches. */
export function recordList({ notebook: { store, methods } }: Workplace, input: ParsedInput<'record.list'>): RecordView {
  const names = entryNames(store, methods);
  return {
    ...countEntries(store, input),
    entries: findEntries(store, input, input.limit, input.offset).map((found) => entryLine(store, names, found)),
  };
}
