import { looksNumeric } from './csv-number.ts';
import { isBlank, type CsvRow } from './csv-rows.ts';

/** One trace of a file: the lines above its data and its data rows, blank lines left out. */
export interface TraceBlock {
  header: CsvRow[];
  rows: CsvRow[];
}

/**
 * Splits a file into its traces. A trace begins at a row that has numbers, and no text, where most rows of the file have
 * numbers; the lines above it are its header. It goes on while rows hold a number there, so that a row with an empty cell
 * or a word can be refused by its line. Lines after the last data row are the footer.
 * @param headerLines lines above the first data row of the file, where a person has said so: what follows is data.
 */
export function splitBlocks(rows: CsvRow[], headerLines: number | undefined): { blocks: TraceBlock[]; footer: CsvRow[] } {
  const columns = numericColumns(rows);
  const blocks: TraceBlock[] = [];
  let header: CsvRow[] = [];
  let current: TraceBlock | null = null;
  for (const row of rows) {
    const saidHeader = headerLines !== undefined && row.line <= headerLines;
    const saidData = headerLines !== undefined && !current && !saidHeader;
    const goesOn = current !== null && header.length === 0 && columns.some((column) => looksNumeric(row.cells[column] ?? ''));
    if (isBlank(row) || saidHeader || !(saidData || goesOn || beginsTrace(row, columns))) {
      header.push(row);
      continue;
    }
    if (!current || header.some((line) => !isBlank(line))) {
      current = { header, rows: [] };
      blocks.push(current);
    }
    header = [];
    current.rows.push(row);
  }
  return { blocks, footer: header.filter((row) => !isBlank(row)) };
}

/**
 * Splits a trace again wherever the displacement has gone back to its start: the next specimen, written without a header.
 * @param displacementAt reads the displacement of a row; NaN where the cell holds none.
 */
export function splitAtRestarts(block: TraceBlock, displacementAt: (row: CsvRow) => number): TraceBlock[] {
  const blocks: TraceBlock[] = [];
  let start = 0;
  let first = Number.NaN;
  let highest = -Infinity;
  block.rows.forEach((row, index) => {
    const at = displacementAt(row);
    if (Number.isNaN(at)) return;
    if (Number.isNaN(first)) first = at;
    // From beyond back to within a twentieth of where it began; the first points may jitter about the start.
    if (index - start >= 3 && highest > first && at - first <= 0.05 * (highest - first)) {
      blocks.push({ header: start === 0 ? block.header : [], rows: block.rows.slice(start, index) });
      start = index;
      first = at;
      highest = at;
    }
    highest = Math.max(highest, at);
  });
  blocks.push({ header: start === 0 ? block.header : [], rows: block.rows.slice(start) });
  return blocks;
}

function beginsTrace(row: CsvRow, columns: number[]): boolean {
  const cells = columns.map((column) => row.cells[column] ?? '');
  return cells.some(looksNumeric) && cells.every((cell) => cell.trim() === '' || looksNumeric(cell));
}

/** So many rows, evenly taken from the file, are enough to see which columns hold numbers. */
const SAMPLE_ROWS = 2000;

/** The columns that hold numbers in the commonest kind of row with at least two of them. */
function numericColumns(rows: CsvRow[]): number[] {
  const counts = new Map<string, number>();
  const step = Math.ceil(rows.length / SAMPLE_ROWS);
  for (let index = 0; index < rows.length; index += step) {
    const row = rows[index]!;
    const columns: number[] = [];
    row.cells.forEach((cell, index) => {
      if (looksNumeric(cell)) columns.push(index);
    });
    if (columns.length >= 2) counts.set(columns.join(), (counts.get(columns.join()) ?? 0) + 1);
  }
  const commonest = [...counts].sort((a, b) => b[1] - a[1])[0];
  return commonest ? commonest[0].split(',').map(Number) : [];
}
