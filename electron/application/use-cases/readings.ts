import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { CellValue, Method } from '../../../shared-lib/method/method.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { cellChange } from '../enter-cell.ts';
import { fillIn } from '../fill-in.ts';
import { fieldNamed } from '../field-named.ts';
import { isFilledIn } from '../is-filled-in.ts';
import { itemFinder } from '../item-finder.ts';
import type { Draft } from '../open-notebook.ts';
import { loadTest, type StoredRow, type StoredTest } from '../queries/tests.ts';
import { readCell } from '../read-cell.ts';
import { Refusal } from '../refusal.ts';
import { requireRow, rowNumber, rowTitle } from '../sheet-rows.ts';
import type { Workplace } from '../workplace.ts';

/** Enters, corrects or clears one cell. */
export function enterReading(workplace: Workplace, input: ParsedInput<'reading.enter'>): BenchSheetView {
  const { testId, row, key, typed, reason } = input;
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const field = fieldNamed(method.readings.fields, key);
  const value = readCell(field, typed, 'typed', itemFinder(notebook.store));
  const stored = openRow(test, method, row);
  const before = stored?.cells[key];
  const change = cellChange(field, before, value, reason, isFilledIn(test, field, before));
  if (change.change === 'corrected') {
    notebook.append([{ kind: 'reading.corrected', body: { testId, row, key, value, typed, before: change.before, reason: change.reason } }]);
  } else if (change.change === 'entered') {
    notebook.append([
      { kind: 'reading.entered', body: { testId, row, key, value, typed } },
      ...fillInIfNew(test, method, row, new Set([key])),
    ]);
  }
  return benchSheet(notebook, testId);
}

/**
 * The row as it is stored, if at all.
 * @throws InputError when there cannot be such a row; Refusal when it is voided
 */
export function openRow(test: StoredTest, method: Method, row: string): StoredRow | undefined {
  requireRow(method, row);
  const stored = test.rows.find((candidate) => candidate.row === row);
  if (stored?.voided) {
    throw new Refusal('conflict', `${rowTitle(method, row)} is voided (${stored.voided.reason}); restore it before writing in it.`);
  }
  return stored;
}

/** The entries that fill in a row's other fields with its first reading; none once it has readings. */
export function fillInIfNew(test: StoredTest, method: Method, row: string, given: Set<string>): Draft[] {
  const stored = test.rows.find((candidate) => candidate.row === row);
  if (stored && Object.keys(stored.cells).length > 0) return [];
  return fillIn(test.testId, method, row, valuesAbove(test, row), given);
}

/** Values of the last row above that has any and counts. */
function valuesAbove(test: StoredTest, row: string): Record<string, CellValue> {
  const above = test.rows.findLast((other) => rowNumber(other.row) < rowNumber(row) && !other.voided && Object.keys(other.cells).length > 0);
  return Object.fromEntries(Object.entries(above?.cells ?? {}).map(([key, cell]) => [key, cell.value]));
}
