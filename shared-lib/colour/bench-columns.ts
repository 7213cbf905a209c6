import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';

/** The columns of numbers of a bench sheet, row by row, without its blank rows. */
export interface BenchColumns<Key extends string> {
  columns: Record<Key, number[]>;
  /** What each row is called. */
  labels: string[];
  /** The index of each row on the sheet. */
  rows: number[];
  /** The cell of a calculation's field such as `solid[2]`; a field that is no column is a condition. */
  cellOf: (field: string) => string;
}

/**
 * Reads columns of which a row has all or nothing.
 * @throws InputError naming the cell that a row lacks, or the first cell of an empty sheet.
 */
export function benchColumns<Key extends string>(bench: BenchReadings, keys: readonly Key[], labelKey = 'label'): BenchColumns<Key> {
  const columns = Object.fromEntries(keys.map((key) => [key, [] as number[]])) as Record<Key, number[]>;
  const rows: number[] = [];
  const labels: string[] = [];
  bench.rows.forEach(({ values }, index) => {
    const missing = keys.filter((key) => numberIn(values, key) === undefined);
    if (missing.length === keys.length) return;
    if (missing.length > 0) throw new InputError(`rows[${index}].${missing[0]}`, null, 'This row is not complete: its other readings need this one.');
    for (const key of keys) columns[key].push(numberIn(values, key)!);
    labels.push(textIn(values, labelKey) ?? `${index + 1}`);
    rows.push(index);
  });
  if (rows.length === 0) throw new InputError(`rows[0].${keys[0]}`, null, 'Nothing has been read yet.');
  return { columns, labels, rows, cellOf: (field) => cellOf(field, keys, rows) };
}

function cellOf(field: string, keys: readonly string[], rows: number[]): string {
  const [, key, place] = /^(\w+)(?:\[(\d+)\])?/.exec(field) ?? [];
  if (key === undefined) return '';
  return keys.includes(key) ? `rows[${rows[Number(place ?? 0)] ?? 0}].${key}` : `conditions.${key}`;
}
