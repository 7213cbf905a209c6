import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { SpectraReading } from '../../shared-lib/notebook/colour-entries.ts';
import { readCsvNumber, type DecimalMark } from './csv-number.ts';
import { detectDelimiter, isBlank, splitRows, type CsvRow } from './csv-rows.ts';
import { wavelengthIn, type FoundSpectrum } from './found-spectrum.ts';

/** So many wavelengths one after the other are no coincidence. */
const FEWEST_BANDS = 8;
/** A row of so many numbers is a spectrum, where no wavelengths stand in the file. */
const FEWEST_NUMBERS = 16;

export type CsvReading = Pick<SpectraReading, 'delimiter' | 'decimal' | 'layout'>;

/**
 * The spectra of a CSV file: one in each column below the wavelengths, or one in each row, the wavelengths in the head. Without
 * wavelengths, wide rows are spectra, else columns.
 * @throws InputError (`reading.delimiter`, `reading.decimal`, or `bytes` naming the line) for what cannot be told or read.
 */
export function readSpectraCsv(text: string, given: Partial<CsvReading>): { reading: CsvReading; found: FoundSpectrum[]; notes: string[] } {
  const delimiter = given.delimiter || (detectDelimiter(text) ?? ' ');
  const rows = (delimiter === ' ' ? splitAtBlanks(text) : splitRows(text, delimiter)).filter((row) => !isBlank(row));
  const decimal = given.decimal ?? decimalMark(rows, delimiter);
  const head = given.layout === 'columns' ? undefined : rows.find((row) => longestRun(row.cells).length >= FEWEST_BANDS);
  if (head) return { reading: { delimiter, decimal, layout: 'rows' }, ...inRows(rows, head, decimal) };
  const column = given.layout === 'rows' ? -1 : wavelengthColumn(rows);
  if (column !== -1) return { reading: { delimiter, decimal, layout: 'columns' }, ...inColumns(rows, column, decimal) };
  const layout = given.layout ?? (rows.some((row) => numbersIn(row, decimal) >= FEWEST_NUMBERS) ? 'rows' : 'columns');
  return { reading: { delimiter, decimal, layout }, found: withoutWavelengths(rows, layout, decimal), notes: ['The file has no wavelengths.'] };
}

function splitAtBlanks(text: string): CsvRow[] {
  return text.split(/\r\n|\r|\n/).map((line, index) => ({ cells: line.trim().split(/\s+/), line: index + 1 }));
}

/** No reading of a spectrum has thousands to split, so that any mark among digits parts decimals. */
function decimalMark(rows: CsvRow[], delimiter: string): DecimalMark {
  if (delimiter === ',') return '.';
  const marked = (decimals: RegExp) => rows.find((row) => row.cells.some((cell) => decimals.test(cell)));
  const [point, comma] = [marked(/^\s*[+\-−]?\d*\.\d+\s*$/), marked(/^\s*[+\-−]?\d*,\d+\s*$/)];
  if (point && comma) {
    throw new InputError('reading.decimal', null, `Line ${point.line} writes decimals with a point, line ${comma.line} with a comma: say which is the decimal mark.`);
  }
  return comma ? ',' : '.';
}

/** The cells that name wavelengths, one beside the other. */
function longestRun(cells: readonly string[]): number[] {
  const wavelengths = cells.map(wavelengthIn);
  let best = { from: 0, to: 0 };
  let from = 0;
  wavelengths.forEach((wavelength, index) => {
    if (wavelength === null) from = index + 1;
    else if (index + 1 - from > best.to - best.from) best = { from, to: index + 1 };
  });
  const run = wavelengths.slice(best.from, best.to) as number[];
  const rising = run.every((value, index) => index === 0 || value > run[index - 1]!);
  const falling = run.every((value, index) => index === 0 || value < run[index - 1]!);
  return rising || falling ? run.map((_, place) => best.from + place) : [];
}

function inRows(rows: CsvRow[], head: CsvRow, decimal: DecimalMark): { found: FoundSpectrum[]; notes: string[] } {
  const bands = longestRun(head.cells);
  const wavelengthsNm = bands.map((index) => wavelengthIn(head.cells[index]!)!);
  const below = rows.slice(rows.indexOf(head) + 1).filter((row) => bands.some((index) => (row.cells[index] ?? '').trim() !== ''));
  if (below.length === 0) throw new InputError('bytes', head.line, `Line ${head.line} names wavelengths, but no readings stand below it.`);
  const names = head.cells.map((_, index) => index).filter((index) => !bands.includes(index));
  const labelled = names.find((index) => below.every((row) => (row.cells[index] ?? '').trim() !== '' && readCsvNumber(row.cells[index]!, decimal) === null)) ?? names.find((index) => index < bands[0]!);
  const found = below.map((row, index) => ({
    name: (labelled === undefined ? '' : (row.cells[labelled] ?? '').trim()) || `row ${index + 1}`,
    values: bands.map((band, place) => numberAt(row, band, wavelengthsNm[place]!, decimal)),
    frame: { wavelengthsNm },
  }));
  const left = names.filter((index) => index !== labelled && below.some((row) => (row.cells[index] ?? '').trim() !== ''));
  return { found, notes: left.length === 0 ? [] : [`Left out the columns without a wavelength: ${left.map((index) => head.cells[index]?.trim() || `column ${index + 1}`).join(', ')}.`] };
}

/** The first column in which wavelengths stand one below the other; −1 where there is none. */
function wavelengthColumn(rows: CsvRow[]): number {
  return Array.from({ length: widthOf(rows) }, (_, column) => column).find((column) => longestRun(rows.map((row) => row.cells[column] ?? '')).length >= FEWEST_BANDS) ?? -1;
}

function inColumns(rows: CsvRow[], column: number, decimal: DecimalMark): { found: FoundSpectrum[]; notes: string[] } {
  const places = longestRun(rows.map((row) => row.cells[column] ?? ''));
  const body = places.map((index) => rows[index]!);
  const wavelengthsNm = body.map((row) => wavelengthIn(row.cells[column]!)!);
  const head = rows[places[0]! - 1];
  const columns = Array.from({ length: widthOf(body) }, (_, index) => index).filter((index) => index !== column && body.some((row) => (row.cells[index] ?? '').trim() !== ''));
  if (columns.length === 0) throw new InputError('bytes', body[0]!.line, `Line ${body[0]!.line}: beside the wavelengths stand no readings.`);
  const found = columns.map((index, place) => ({
    name: (head?.cells[index] ?? '').trim() || `column ${place + 1}`,
    values: body.map((row, band) => numberAt(row, index, wavelengthsNm[band]!, decimal)),
    frame: { wavelengthsNm },
  }));
  const after = rows.slice(places.at(-1)! + 1);
  return { found, notes: after.length === 0 ? [] : [`Left out what follows the wavelengths, from line ${after[0]!.line} on.`] };
}

function withoutWavelengths(rows: CsvRow[], layout: 'rows' | 'columns', decimal: DecimalMark): FoundSpectrum[] {
  if (layout === 'rows') {
    const wide = rows.filter((row) => numbersIn(row, decimal) >= FEWEST_NUMBERS);
    if (wide.length === 0) throw noSpectrum();
    return wide.map((row, index) => {
      const values = row.cells.flatMap((cell) => readCsvNumber(cell, decimal) ?? []);
      const name = row.cells.find((cell) => cell.trim() !== '' && readCsvNumber(cell, decimal) === null)?.trim();
      return { name: name ?? `row ${index + 1}`, values, frame: { wavelengthsNm: null } };
    });
  }
  const body = rows.filter((row) => numbersIn(row, decimal) > 0);
  if (body.length < FEWEST_NUMBERS) throw noSpectrum();
  const head = rows[rows.indexOf(body[0]!) - 1];
  return Array.from({ length: widthOf(body) }, (_, column) => ({
    name: head?.cells[column]?.trim() || `column ${column + 1}`,
    values: body.map((row) => numberAt(row, column, null, decimal)),
    frame: { wavelengthsNm: null },
  }));
}

/** Cells of the widest row; a file may have more rows than a call takes arguments. */
function widthOf(rows: CsvRow[]): number {
  return rows.reduce((widest, row) => Math.max(widest, row.cells.length), 0);
}

function noSpectrum(): InputError {
  return new InputError('bytes', null, `The file holds no spectrum: neither wavelengths nor ${FEWEST_NUMBERS} readings stand beside or below one another.`);
}

function numbersIn(row: CsvRow, decimal: DecimalMark): number {
  return row.cells.filter((cell) => readCsvNumber(cell, decimal) !== null).length;
}

function numberAt(row: CsvRow, column: number, nm: number | null, decimal: DecimalMark): number {
  const cell = (row.cells[column] ?? '').trim().replace(/\s*%$/, '');
  const at = nm === null ? '' : ` at ${nm} nm`;
  if (cell === '') throw new InputError('bytes', row.line, `Line ${row.line}: the reading${at} is missing (column ${column + 1} is empty).`);
  const value = readCsvNumber(cell, decimal);
  if (value === null || !Number.isFinite(value)) throw new InputError('bytes', cell.slice(0, 40), `Line ${row.line}: the reading${at}, “${cell.slice(0, 40)}”, is no number with decimal ${decimal === '.' ? 'point' : 'comma'}.`);
  return value;
}
