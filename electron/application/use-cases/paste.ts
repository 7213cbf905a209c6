import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Method } from '../../../shared-lib/method/method.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { fieldNamed } from '../field-named.ts';
import { isFilledIn } from '../is-filled-in.ts';
import type { Draft } from '../open-notebook.ts';
import { groupBy } from '../queries/group-by.ts';
import { loadTest, type StoredTest } from '../queries/tests.ts';
import { readPaste, type PastedCell } from '../read-paste.ts';
import { rowNumber } from '../sheet-rows.ts';
import type { Workplace } from '../workplace.ts';
import { fillInIfNew, openRow } from './readings.ts';

/** Enters a pasted column or block, all of it or nothing. What is there already is never written over by a paste. */
export function pasteReadings(workplace: Workplace, { testId, row, key, pasted }: ParsedInput<'readings.paste'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const { fields } = method.readings;
  openRow(test, method, row);
  const cells = readPaste(fields.slice(fields.indexOf(fieldNamed(fields, key))), pasted);
  if (cells.length === 0) throw new InputError('pasted', null, 'Nothing was pasted; copy a column of numbers first.');
  const drafts = draftsFor(test, method, rowNumber(row), cells);
  if (drafts.length > 0) notebook.append(drafts);
  return benchSheet(notebook, testId);
}

function draftsFor(test: StoredTest, method: Method, firstRow: number, cells: PastedCell[]): Draft[] {
  const occupied: string[] = [];
  let soFar = test;
  const drafts = [...groupBy(cells, (cell) => cell.down)].flatMap(([down, line]): Draft[] => {
    const row = `r${firstRow + down}`;
    const stored = openRow(test, method, row);
    const entered = line.flatMap(({ field, typed, value }): Draft[] => {
      const before = stored?.cells[field.key];
      if (before && before.value === value) return [];
      if (before && !isFilledIn(test, field, before)) occupied.push(`${field.label} in ${method.readings.rowName} ${firstRow + down}`);
      return [{ kind: 'reading.entered', body: { testId: test.testId, row, key: field.key, value, typed } }];
    });
    const lineDrafts = [...entered, ...fillInIfNew(soFar, method, row, new Set(line.map(({ field }) => field.key)))];
    soFar = withReadings(soFar, row, lineDrafts);
    return lineDrafts;
  });
  if (occupied.length > 0) {
    throw new InputError('pasted', null, `There are values already: ${listed(occupied)}. Nothing was pasted; correct those cells one by one, with a reason.`);
  }
  return drafts;
}

/** The test as it will be, so that the next line carries down from this one. */
function withReadings(test: StoredTest, row: string, drafts: Draft[]): StoredTest {
  const stored = test.rows.find((candidate) => candidate.row === row);
  const cells = { ...stored?.cells };
  for (const draft of drafts) {
    if (draft.kind === 'reading.entered') cells[draft.body.key] = { value: draft.body.value, typed: draft.body.typed, corrections: 0, seq: 0 };
  }
  const rows = [...test.rows.filter((other) => other !== stored), { row, voided: null, remark: '', ...stored, cells }];
  return { ...test, rows: rows.sort((a, b) => rowNumber(a.row) - rowNumber(b.row)) };
}

function listed(names: string[]): string {
  const shown = names.slice(0, 5).join(', ');
  return names.length > 5 ? `${shown} and ${names.length - 5} more` : shown;
}
