import type { Calculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { ReadRow } from './read-rows.ts';
import { runOnBench } from './run-on-bench.ts';

/** How the input of a calculation was made from a sheet. */
export interface FromRows {
  /** The field that holds an entry for each of `rows`. */
  list: string;
  rows: readonly ReadRow[];
  /** The cell that an entry as a whole stands for. */
  first: string;
  /** Fields that are conditions of the same key. */
  conditions?: readonly string[];
  /** Fields of an entry whose cell has another key: `squares.total` → `squaresTotal`, or a condition: `areaM2` → `conditions.areaCm2`. */
  cells?: Record<string, string>;
}

/**
 * Runs a calculation that takes one entry for each row read. Its refusals and flags name the cell, and a specimen by its number on the
 * sheet, which is not its place in the input where rows before it are blank or voided.
 * @throws InputError with the cell as its field
 */
export function runOnRows(calculation: Calculation, input: unknown, from: FromRows): CalculationResult {
  const cellOf = (field: string) => cellIn(from, field);
  try {
    const result = runOnBench(calculation, input, cellOf);
    return {
      ...result,
      flags: result.flags.map((flag) => {
        const where = cellOf(flag.where) || flag.where;
        return { ...flag, where, text: numbered(from, where, flag.text) };
      }),
    };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.field, error.value, numbered(from, error.field, error.message));
  }
}

/** `specimens[2].squares.total` → `rows[4].squaresTotal`; '' for a field that is neither a cell nor a condition. */
function cellIn({ list, rows, first, conditions = [], cells = {} }: FromRows, field: string): string {
  const [, name, place, rest = ''] = /^(\w+)\[(\d+)\]\.?(.*)$/.exec(field) ?? [];
  if (name !== list) return conditions.includes(field) ? `conditions.${field}` : '';
  const path = rest.replace(/\[.*$/, '');
  const key = cells[path] ?? (path || first);
  return key.startsWith('conditions.') ? key : `rows[${rows[Number(place)]!.index}].${key}`;
}

function numbered({ list, rows }: FromRows, cell: string, text: string): string {
  if (list !== 'specimens') return text;
  const index = Number(/^rows\[(\d+)\]/.exec(cell)?.[1]);
  const place = rows.findIndex((row) => row.index === index);
  return place === -1 ? text : text.replace(new RegExp(`\\b(specimen) ${place + 1}\\b`, 'i'), `$1 ${index + 1}`);
}
