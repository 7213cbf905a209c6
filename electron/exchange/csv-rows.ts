import Papa from 'papaparse';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { looksNumeric } from './csv-number.ts';

/** One row of the file. */
export interface CsvRow {
  cells: string[];
  /** Line of the file, from 1. */
  line: number;
}

/** Marks that may split columns, the likelier first where two split a file equally well. */
const DELIMITERS = ['\t', ';', '|', ','] as const;
const SAMPLE_CHARACTERS = 40_000;

/**
 * The file's rows, blank lines included.
 * @throws InputError (`bytes`) naming the line where a quotation mark is never closed.
 */
export function splitRows(text: string, delimiter: string): CsvRow[] {
  const parsed = Papa.parse<string[]>(text, { delimiter });
  let line = 1;
  const rows = parsed.data.map((cells) => {
    const row = { cells, line };
    line += 1;
    for (const cell of cells) if (cell.includes('\n')) line += cell.split('\n').length - 1;
    return row;
  });
  const fault = parsed.errors.find((error) => error.type === 'Quotes');
  if (fault) {
    const at = rows[fault.row ?? 0]?.line ?? 1;
    throw new InputError('bytes', at, `Line ${at} opens a quotation mark that is not closed properly.`);
  }
  return rows;
}

export function isBlank(row: CsvRow): boolean {
  return row.cells.every((cell) => cell.trim() === '');
}

/**
 * The mark that splits most lines into at least two numbers; `null` where none does. A first line `sep=;` settles it.
 */
export function detectDelimiter(text: string): string | null {
  const hint = /^sep=(.)\r?\n/i.exec(text)?.[1];
  if (hint) return hint;
  // Whole lines only: a cut last line would count wrongly.
  const sample = text.length > SAMPLE_CHARACTERS ? text.slice(0, text.lastIndexOf('\n', SAMPLE_CHARACTERS)) : text;
  let best: { delimiter: string; lines: number } | null = null;
  for (const delimiter of DELIMITERS) {
    const { data } = Papa.parse<string[]>(sample, { delimiter });
    const lines = data.filter((cells) => cells.filter(looksNumeric).length >= 2).length;
    if (lines > (best?.lines ?? 0)) best = { delimiter, lines };
  }
  return best?.delimiter ?? null;
}
