import type { Content, ContentText, TableCell } from 'pdfmake/interfaces.js';
import { decimalColumn, isNumberText } from './decimal-column.ts';
import { contentWidth, ruledLayout, size, styles, theme } from './look.ts';
import { titleRow } from './title-row.ts';
import { textWidth } from './typeface.ts';

export interface DataRow {
  cells: string[];
  /** Counts no more: struck through. */
  struck?: boolean;
  /** Printed under the row across the whole width. */
  notes?: string[];
}

const PADDING = 6;
const WIDEST_COLUMN = 170;
/** A row may break across pages when it might be higher than this, in points; lower ones stay whole. */
const HIGHEST_WHOLE_ROW = 300;

/**
 * A table of text and numbers under `title`, as high and wide as it needs. Columns get the width of their content; text columns give
 * way first; what still does not fit goes into further tables below, each with the first column repeated.
 */
export function dataTables(title: ContentText, heads: string[], rows: DataRow[]): Content[] {
  const columns = heads.map((head, index) => measure(head, rows.map((row) => row.cells[index] ?? '')));
  const blocks = split(columns);
  return blocks.map((indices, block) => {
    const part = blocks.length > 1 ? `  columns ${indices[block === 0 ? 0 : 1]! + 1} to ${indices.at(-1)! + 1} of ${heads.length}` : '';
    const named = { ...title, text: [{ text: title.text }, { text: part, style: 'quiet', bold: false }] } as ContentText;
    return table(named, heads, rows, indices, columns, block === 0);
  });
}

interface Column {
  natural: number;
  least: number;
  numeric: boolean;
}

function measure(head: string, texts: string[]): Column {
  const numeric = texts.some((text) => text !== '') && texts.every((text) => text === '' || text === '—' || isNumberText(text));
  const longest = (text: string, measureText: (part: string) => number) => Math.max(0, ...text.split(/\s+/u).map(measureText));
  const inHead = (text: string) => textWidth(text, Number(styles.head!.fontSize));
  const inCell = (text: string) => textWidth(text.slice(0, 200), size.table);
  const lines = texts.flatMap((text) => text.split('\n'));
  // Heads may take two or three lines; numbers never break.
  const headWidth = Math.max(longest(head, inHead), Math.min(inHead(head), 56));
  const words = numeric ? Math.max(0, ...texts.map(inCell)) : Math.max(0, ...texts.map((text) => longest(text.slice(0, 2000), inCell)));
  return {
    natural: Math.min(WIDEST_COLUMN, Math.max(headWidth, ...lines.map(inCell))) + 1,
    least: Math.min(90, Math.max(longest(head, inHead), words, 14)) + 1,
    numeric,
  };
}

/** Indices of the columns of each table. */
function split(columns: Column[]): number[][] {
  const count = pack(columns, Infinity).length;
  // As many in each, so that no last column is left alone.
  return pack(columns, Math.ceil((columns.length - 1) / count) + 1);
}

function pack(columns: Column[], most: number): number[][] {
  const room = ({ least }: Column) => least + PADDING;
  const blocks: number[][] = [];
  let current = [0];
  let used = room(columns[0]!);
  for (const [index, column] of columns.entries()) {
    if (index === 0) continue;
    if (current.length > 1 && (current.length >= most || used + room(column) > contentWidth)) {
      blocks.push(current);
      current = [0];
      used = room(columns[0]!);
    }
    current.push(index);
    used += room(column);
  }
  return [...blocks, current];
}

function fit(columns: Column[]): number[] {
  const available = contentWidth - columns.length * PADDING;
  const natural = columns.reduce((sum, column) => sum + column.natural, 0);
  const least = columns.reduce((sum, column) => sum + column.least, 0);
  if (natural <= available) return columns.map((column) => column.natural);
  const share = Math.max(0, (available - least) / (natural - least || 1));
  return columns.map((column) => column.least + (column.natural - column.least) * share);
}

function table(title: ContentText, heads: string[], rows: DataRow[], indices: number[], columns: Column[], withNotes: boolean): Content {
  const used = fit(indices.map((index) => columns[index]!));
  const left = contentWidth - used.reduce((sum, width) => sum + width + PADDING, 0);
  // An empty last column carries the rules across the page.
  const widths = left > 20 ? [...used, '*'] : used;
  const cells = indices.map((index): ContentText[] => {
    const texts = rows.map((row) => row.cells[index] ?? '');
    return columns[index]!.numeric ? decimalColumn(texts, size.table) : texts.map((text) => ({ text, fontSize: size.table }));
  });
  const head = indices.map((index): TableCell => ({ text: heads[index]!, style: 'head', alignment: columns[index]!.numeric ? 'right' : 'left', verticalAlignment: 'bottom' }));
  const body = rows.flatMap((row, at): TableCell[][] => {
    const line = cells.map((column): TableCell => (row.struck ? { ...column[at]!, decoration: 'lineThrough', color: theme.quiet } : column[at]!));
    const notes = withNotes ? (row.notes ?? []) : [];
    const noteRows = notes.map((text) => titleRow({ text, style: 'quiet', margin: [8, 0, 0, 0], border: [false, false, false, true] }, widths.length));
    return [noteRows.length > 0 ? line.map((cell) => ({ ...(cell as ContentText), border: [false, false, false, false] }) satisfies TableCell) : line, ...noteRows];
  });
  const padded = [head, ...body].map((row) => [...row, ...Array.from({ length: widths.length - row.length }, () => ({ text: '', fontSize: size.table, border: row[0]!.border }))]);
  // What is kept together must fit on a page: pdfmake leaves out what does not.
  const whole = rows.every((row) => mayStayWhole(row, indices, used));
  return {
    table: { headerRows: 2, keepWithHeaderRows: whole ? 1 : 0, dontBreakRows: whole, widths, body: [titleRow(title, widths.length), ...padded] },
    layout: ruledLayout(2),
  };
}

function mayStayWhole(row: DataRow, indices: number[], widths: number[]): boolean {
  const lines = (text: string, width: number) => text.split('\n').reduce((sum, part) => sum + Math.ceil((textWidth(part, size.table) * 1.2) / width + 0.01), 0);
  const cells = indices.map((index, at) => lines(row.cells[index] ?? '', widths[at]!));
  const notes = (row.notes ?? []).map((text) => lines(text, contentWidth / 2));
  return Math.max(...cells, ...notes) * size.table * 1.35 < HIGHEST_WHOLE_ROW;
}
