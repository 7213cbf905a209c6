import type { Content, ContentText, TableCell } from 'pdfmake/interfaces.js';
import { fit, measure, PADDING, split, type Column } from './column-widths.ts';
import { decimalColumn } from './decimal-column.ts';
import { contentWidth, ruledLayout, size, theme } from './look.ts';
import { textHeight } from './text-height.ts';
import { titleRow } from './title-row.ts';
import { textWidth } from './typeface.ts';

export interface DataRow {
  cells: string[];
  /** Counts no more: struck through. */
  struck?: boolean;
  /** Printed under the row across the whole width. */
  notes?: string[];
}

/** A row may break across pages when it might be higher than this, in points; lower ones stay whole. */
const HIGHEST_WHOLE_ROW = 300;
/** A table that is lower than this, in points, stays whole. */
const HIGHEST_WHOLE_TABLE = 250;
/** Rows that stay with their head, so that no row is left alone under it. */
const ROWS_WITH_HEAD = 3;

/** Two blocks side by side: from so many rows, at most so many rows in one block; points between them. */
const ABREAST = { leastRows: 10, rowsInBlock: 20, gap: 16 };

/**
 * A table of text and numbers under `title`, as high and wide as it needs. Columns get the width of their content; text columns give
 * way first; what still does not fit goes into further tables below, each with the first column repeated. A long narrow table is laid
 * in two blocks side by side, read down the left one first.
 */
export function dataTables(title: ContentText, heads: string[], rows: DataRow[]): Content[] {
  const columns = heads.map((head, index) => measure(head, rows.map((row) => row.cells[index] ?? '')));
  if (goesAbreast(columns, rows)) return abreast(title, heads, rows, columns);
  const blocks = split(columns);
  return blocks.map((indices, block) => {
    const part = blocks.length > 1 ? `columns ${indices[block === 0 ? 0 : 1]! + 1} to ${indices.at(-1)! + 1} of ${heads.length}` : '';
    return table({ title: withPart(title, part), heads, rows, indices, columns, withNotes: block === 0, width: contentWidth });
  });
}

function withPart(title: ContentText, part: string): ContentText {
  return part === '' ? title : ({ ...title, text: [{ text: title.text }, { text: `  ${part}`, style: 'quiet', bold: false }] } as ContentText);
}

const halfWidth = (contentWidth - ABREAST.gap) / 2;

/** Where each row takes one line, and each note one. */
function goesAbreast(columns: Column[], rows: DataRow[]): boolean {
  if (rows.length < ABREAST.leastRows || columns.reduce((sum, { least }) => sum + least + PADDING, 0) > halfWidth) return false;
  const widths = fit(columns, halfWidth);
  return rows.every(
    ({ cells, notes = [] }) => widths.every((width, index) => textWidth(cells[index] ?? '', size.table) <= width) && notes.every((note) => textWidth(note, size.small) < halfWidth - 20),
  );
}

/** Each pair of blocks stays whole: broken, it would be read across the page break in the wrong order. */
function abreast(title: ContentText, heads: string[], rows: DataRow[], columns: Column[]): Content[] {
  const indices = heads.map((_, index) => index);
  const inPair = 2 * ABREAST.rowsInBlock;
  const pairs = Array.from({ length: Math.ceil(rows.length / inPair) }, (_, index) => rows.slice(index * inPair, (index + 1) * inPair));
  return pairs.map((pair, index) => {
    const left = Math.ceil(pair.length / 2);
    const part = pairs.length > 1 ? `rows ${index * inPair + 1} to ${index * inPair + pair.length} of ${rows.length}` : '';
    const block = (blockRows: DataRow[]) => ({ width: halfWidth, stack: [table({ title: null, heads, rows: blockRows, indices, columns, withNotes: true, width: halfWidth })] });
    const blocks = [pair.slice(0, left), pair.slice(left)].filter((blockRows) => blockRows.length > 0).map(block);
    return { unbreakable: true, stack: [withPart(title, part), { columns: blocks, columnGap: ABREAST.gap }] };
  });
}

interface TablePart {
  title: ContentText | null;
  heads: string[];
  rows: DataRow[];
  indices: number[];
  columns: Column[];
  withNotes: boolean;
  width: number;
}

function table({ title, heads, rows, indices, columns, withNotes, width }: TablePart): Content {
  const used = fit(indices.map((index) => columns[index]!), width);
  const left = width - used.reduce((sum, part) => sum + part + PADDING, 0);
  // An empty last column carries the rules across the page.
  const widths = left > 20 ? [...used, '*'] : used;
  const cells = indices.map((index): ContentText[] => {
    const texts = rows.map((row) => row.cells[index] ?? '');
    return columns[index]!.numeric ? decimalColumn(texts, size.table) : texts.map((text) => ({ text, fontSize: size.table }));
  });
  const head = indices.map((index, at): TableCell => ({ text: headText(heads[index]!, used[at]!), style: 'head', alignment: columns[index]!.numeric ? 'right' : 'left', verticalAlignment: 'bottom' }));
  const body = rows.flatMap((row, at): TableCell[][] => {
    const line = cells.map((column): TableCell => (row.struck ? { ...column[at]!, decoration: 'lineThrough', color: theme.quiet } : column[at]!));
    const notes = withNotes ? (row.notes ?? []) : [];
    const noteRows = notes.map((text) => titleRow({ text, style: 'quiet', margin: [8, 0, 0, 0], border: [false, false, false, true] }, widths.length));
    return [noteRows.length > 0 ? line.map((cell) => ({ ...(cell as ContentText), border: [false, false, false, false] }) satisfies TableCell) : line, ...noteRows];
  });
  const padded = [head, ...body].map((row) => [...row, ...Array.from({ length: widths.length - row.length }, () => ({ text: '', fontSize: size.table, border: row[0]!.border }))]);
  // What is kept together must fit on a page: pdfmake leaves out what does not.
  const heights = rows.map((row) => rowHeight(row, indices, used, width));
  const whole = heights.every((height) => height < HIGHEST_WHOLE_ROW);
  const sum = (parts: number[]) => parts.reduce((total, part) => total + part, 0);
  const withHead = sum(heights.slice(0, ROWS_WITH_HEAD)) < HIGHEST_WHOLE_ROW ? ROWS_WITH_HEAD : whole ? 1 : 0;
  const top = title === null ? [] : [titleRow(title, widths.length)];
  return {
    unbreakable: sum(heights) < HIGHEST_WHOLE_TABLE,
    table: { headerRows: top.length + 1, keepWithHeaderRows: withHead, dontBreakRows: whole, widths, body: [...top, ...padded] },
    layout: ruledLayout(top.length + 1),
  };
}

/** The unit of a head that needs two lines stands on the second, whole. */
function headText(head: string, width: number): string {
  return textWidth(head, size.small) <= width ? head : head.replace(/ (?=\([^()]*\)$)/u, '\n');
}

const ROW_PADDING = 5;

function rowHeight(row: DataRow, indices: number[], widths: number[], width: number): number {
  const cells = indices.map((index, at) => textHeight(row.cells[index] ?? '', widths[at]!, size.table));
  const notes = (row.notes ?? []).map((text) => textHeight(text, width - 8, size.small) + ROW_PADDING);
  return Math.max(...cells) + ROW_PADDING + notes.reduce((sum, note) => sum + note, 0);
}
