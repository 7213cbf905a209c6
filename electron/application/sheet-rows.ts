import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { Method } from '../../shared-lib/method/method.ts';
import type { StoredRow, StoredTest } from './queries/tests.ts';
import { severalOf } from '../../shared-lib/quantity/words.ts';

/**
 * The rows of the sheet: those written in, and blank ones between and after them. There is always a blank one to go on
 * with, up to the method's most. A blank row comes into the notebook with its first entry.
 * @param startRows laid out on a new sheet: as many as a plan asks for, or the method
 */
export function sheetRows(test: Pick<StoredTest, 'rows'>, method: Method, startRows = method.readings.startRows): StoredRow[] {
  const { maxRows } = method.readings;
  const written = new Map(test.rows.map((row) => [row.row, row]));
  const last = Math.max(0, ...test.rows.map((row) => rowNumber(row.row)));
  const count = Math.max(last, Math.min(maxRows, Math.max(startRows, last + 1)));
  return Array.from({ length: count }, (_, index) => {
    const row = `r${index + 1}`;
    return written.get(row) ?? { row, cells: {}, voided: null, remark: '' };
  });
}

/** 'r3' → 3. */
export function rowNumber(row: string): number {
  return Number(row.slice(1));
}

/** 'Specimen 3', to begin a sentence with. */
export function rowTitle(method: Method, row: string): string {
  const { rowName } = method.readings;
  return `${rowName.charAt(0).toUpperCase()}${rowName.slice(1)} ${rowNumber(row)}`;
}

/** @throws InputError when there cannot be such a row on the sheet */
export function requireRow(method: Method, row: string): void {
  const { maxRows, rowName } = method.readings;
  if (!/^r[1-9]\d{0,5}$/.test(row)) throw new InputError('row', row, 'A row is named r1, r2, r3 and so on.');
  if (rowNumber(row) > maxRows) throw new InputError('row', row, `This sheet takes at most ${maxRows} ${severalOf(rowName)}.`);
}
