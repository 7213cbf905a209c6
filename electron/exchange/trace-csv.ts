import { envelope } from '../../shared-lib/bond-strength/envelope.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { TraceReading } from '../../shared-lib/notebook/entry.ts';
import type { TracePreview } from '../../shared-lib/notebook/views.ts';
import { millimetresPer, newtonsPer } from '../../shared-lib/quantity/units.ts';
import { chooseColumns, decimalOf, displacementUnitOf, forceUnitOf } from './complete-reading.ts';
import { readCsvNumber } from './csv-number.ts';
import { detectDelimiter, isBlank, splitRows, type CsvRow } from './csv-rows.ts';
import { decodeText } from './decode-text.ts';
import { spreadRepeats } from './spread-repeats.ts';
import { splitAtRestarts, splitBlocks, type TraceBlock } from './trace-blocks.ts';
import { readHeader, type TraceColumn } from './trace-header.ts';

/** A trace read from a file. */
export interface ReadTrace {
  displacementMm: Float64Array;
  forceN: Float64Array;
  /** What was left out or taken for granted, one sentence each. */
  notes: string[];
}

const PREVIEW_LINES = 12;
const PREVIEW_LINE_LENGTH = 200;
const OUTLINE_POINTS = 1000;

/**
 * Reads a CSV trace as far as `reading` says how, finds out the rest, and shows both for a person to confirm.
 * @throws InputError with field `reading.KEY` for what the file does not tell (unit, decimal mark, column), and with field
 *   `bytes` for a file that cannot be read; the message names the line.
 */
export function previewTraceCsv(name: string, bytes: Uint8Array, reading: Partial<TraceReading>): TracePreview {
  const text = decodeText(bytes);
  const laidOut = layOut(text, reading);
  const trace = readBlock(laidOut);
  return {
    lines: text.split(/\r\n|\r|\n/, PREVIEW_LINES).map((line) => line.slice(0, PREVIEW_LINE_LENGTH)),
    columns: laidOut.columns.map((column, index) => (column.name || `column ${index + 1}`) + (column.unit ? ` (${column.unit})` : '')),
    reading: laidOut.reading,
    points: trace.forceN.length,
    displacementMm: { low: trace.displacementMm[0]!, high: trace.displacementMm.at(-1)! },
    forceN: extent(trace.forceN),
    outline: envelope(trace, OUTLINE_POINTS).map((point): [number, number] => [point.x, point.y!]),
    notes: trace.notes,
    blocks: laidOut.blocks.length > 1 ? laidOut.blocks.map((block, index) => blockName(block, index, name)) : [],
  };
}

/**
 * Reads the trace that a confirmed `reading` describes; displacement in mm, force in N.
 * @throws InputError naming the line of a value that is missing, no number, or goes back in displacement.
 */
export function readTraceCsv(bytes: Uint8Array, reading: TraceReading): ReadTrace {
  return readBlock(layOut(decodeText(bytes), reading));
}

interface LaidOut {
  reading: TraceReading;
  columns: TraceColumn[];
  blocks: TraceBlock[];
  block: TraceBlock;
  footer: CsvRow[];
}

function layOut(text: string, given: Partial<TraceReading>): LaidOut {
  const delimiter = given.delimiter ?? detectDelimiter(text);
  if (!delimiter) {
    throw new InputError('reading.delimiter', null, 'No line of the file holds two numbers split by tab, semicolon, comma or |; a trace needs a displacement and a force in each line.');
  }
  const split = splitBlocks(splitRows(text, delimiter), given.headerLines);
  const firstBlock = split.blocks[0];
  if (!firstBlock) throw new InputError('bytes', null, `No line after line ${given.headerLines ?? 0} holds a displacement and a force.`);
  const decimal = given.decimal ?? decimalOf(split.blocks.flatMap((block) => block.rows), delimiter);
  const width = Math.max(...firstBlock.rows.slice(0, 100).map((row) => row.cells.length));
  const columns = readHeader(firstBlock.header, width);
  const { displacementColumn, forceColumn } = chooseColumns(columns, firstBlock, decimal, given);
  const displacementAt = (row: CsvRow) => readCsvNumber(row.cells[displacementColumn] ?? '', decimal) ?? Number.NaN;
  refuseTextWithin(split.blocks, displacementAt);
  const blocks = split.blocks.flatMap((block) => splitAtRestarts(block, displacementAt));
  const chosen = given.block ?? 0;
  const block = blocks[chosen];
  if (!block) throw new InputError('reading.block', chosen, `The file holds ${blocks.length} trace(s); trace ${chosen + 1} does not exist.`);
  return {
    reading: {
      delimiter,
      decimal,
      headerLines: firstBlock.rows[0]!.line - 1,
      displacementColumn,
      displacementUnit: given.displacementUnit ?? displacementUnitOf(columns[displacementColumn]!, firstBlock),
      forceColumn,
      forceUnit: given.forceUnit ?? forceUnitOf(columns[forceColumn]!, firstBlock),
      block: chosen,
    },
    columns,
    blocks,
    block,
    footer: chosen === blocks.length - 1 ? split.footer : [],
  };
}

function readBlock({ block, reading, footer }: LaidOut): ReadTrace {
  const { rows } = block;
  const displacementMm = new Float64Array(rows.length);
  const forceN = new Float64Array(rows.length);
  const toMillimetres = millimetresPer[reading.displacementUnit];
  const toNewtons = newtonsPer[reading.forceUnit];
  rows.forEach((row, index) => {
    displacementMm[index] = numberAt(row, reading.displacementColumn, 'displacement', reading) * toMillimetres;
    forceN[index] = numberAt(row, reading.forceColumn, 'force', reading) * toNewtons;
    if (index > 0 && displacementMm[index]! < displacementMm[index - 1]!) {
      throw new InputError('bytes', row.line, `Line ${row.line}: the displacement goes back from ${displacementMm[index - 1]} to ${displacementMm[index]} mm; a trace must only go forward. Leave the way back out of the file.`);
    }
  });
  if (rows.length < 2 || displacementMm[0] === displacementMm.at(-1)) {
    throw new InputError('bytes', rows.length, `Line ${rows[0]!.line}: the trace needs at least 2 points at different displacements.`);
  }
  const notes: string[] = [];
  const moved = spreadRepeats(displacementMm);
  if (moved > 0) notes.push(`${moved} of ${rows.length} points share the displacement of the point before (the file gives it coarsely); they were spread evenly over the step to the next.`);
  if (footer.length > 0) notes.push(`Left out the text after the data, from line ${footer[0]!.line} on.`);
  return { displacementMm, forceN, notes };
}

function numberAt(row: CsvRow, column: number, what: string, { decimal }: TraceReading): number {
  const cell = row.cells[column]?.trim() ?? '';
  if (cell === '') throw new InputError('bytes', row.line, `Line ${row.line} has no ${what} (column ${column + 1} is empty).`);
  const value = readCsvNumber(cell, decimal);
  if (value === null || !Number.isFinite(value)) {
    throw new InputError('bytes', cell, `Line ${row.line}: the ${what} "${cell.slice(0, 40)}" is no number with decimal ${decimal === '.' ? 'point' : 'comma'}.`);
  }
  return value;
}

/** Text between rows whose displacement simply goes on is no header of a next trace: something is missing there. */
function refuseTextWithin(blocks: TraceBlock[], displacementAt: (row: CsvRow) => number): void {
  for (const [index, block] of blocks.entries()) {
    const before = blocks[index - 1]?.rows.at(-1);
    if (!before || block.header.some(isBlank)) continue;
    if (displacementAt(block.rows[0]!) > displacementAt(before)) {
      const line = block.header[0]!.line;
      throw new InputError('bytes', line, `Line ${line} holds no displacement and force in the middle of a trace.`);
    }
  }
}

function blockName(block: TraceBlock, index: number, fileName: string): string {
  const title = block.header.find((row) => row.cells.filter((cell) => cell.trim() !== '').length > 0);
  const words = title?.cells.map((cell) => cell.trim()).filter(Boolean).join(' ').slice(0, 60);
  return `${index + 1}: ${words || fileName}, from line ${block.rows[0]!.line}`;
}

function extent(values: Float64Array): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { low, high };
}
