import Papa from 'papaparse';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { CellValue, Field } from '../../shared-lib/method/method.ts';
import { readCell } from './read-cell.ts';

/** One cell of a pasted block: how far below and right of the first cell it lies. */
export interface PastedCell {
  /** 0, 1, 2 … lines below the cell that was pasted into. */
  down: number;
  field: Field;
  typed: string;
  value: CellValue;
}

/**
 * A column or block copied from a spreadsheet (tabs and line ends; quoted cells as spreadsheets write them).
 * Empty cells are left out: they leave what is there alone.
 * @param fields the fields from the first cell rightwards
 * @throws InputError naming the line and the value of the first cell that cannot be taken.
 */
export function readPaste(fields: Field[], pasted: string): PastedCell[] {
  const { data: lines, errors } = Papa.parse<string[]>(pasted.replace(/(\r\n|\r|\n)+$/, ''), { delimiter: '\t' });
  const quote = errors.find((error) => error.type === 'Quotes');
  if (quote) throw new InputError('pasted', null, `Line ${(quote.row ?? 0) + 1} has a quotation mark that is not closed.`);
  return lines.flatMap((line, down) => {
    if (line.length > fields.length && line.slice(fields.length).some((typed) => typed.trim() !== '')) {
      throw new InputError('pasted', null, `Line ${down + 1} has ${line.length} columns; from this cell rightwards the sheet has ${fields.length}.`);
    }
    return line.slice(0, fields.length).flatMap((typed, across) => {
      const field = fields[across]!;
      const value = readPastedCell(field, typed, down);
      return value === null ? [] : [{ down, field, typed, value }];
    });
  });
}

function readPastedCell(field: Field, typed: string, down: number): CellValue {
  try {
    return readCell(field, typed, 'pasted');
  } catch (error) {
    if (error instanceof InputError) throw new InputError('pasted', error.value, `Line ${down + 1}: ${error.message}`);
    throw error;
  }
}
