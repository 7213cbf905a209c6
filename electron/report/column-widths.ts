import { isNumberText } from './decimal-column.ts';
import { contentWidth, size, styles } from './look.ts';
import { textWidth } from './typeface.ts';

/** Between two columns, in points. */
export const PADDING = 6;
const WIDEST_COLUMN = 170;

/** A column as its content asks for it: widths in points. */
export interface Column {
  natural: number;
  least: number;
  numeric: boolean;
}

export function measure(head: string, texts: string[]): Column {
  const numeric = texts.some((text) => text !== '') && texts.every((text) => text === '' || text === '—' || isNumberText(text));
  const longest = (text: string, measureText: (part: string) => number) => Math.max(0, ...text.split(/\s+/u).map(measureText));
  const inHead = (text: string) => textWidth(text, Number(styles.head!.fontSize));
  const inCell = (text: string) => textWidth(text.slice(0, 200), size.table);
  const lines = texts.flatMap((text) => text.split('\n'));
  // Heads may take two or three lines; numbers never break.
  const headWidth = Math.max(longest(head, inHead), Math.min(inHead(head), 40));
  const words = numeric ? Math.max(0, ...texts.map(inCell)) : Math.max(0, ...texts.map((text) => longest(text.slice(0, 2000), inCell)));
  return {
    natural: Math.min(WIDEST_COLUMN, Math.max(headWidth, ...lines.map(inCell))) + 1,
    least: Math.min(90, Math.max(longest(head, inHead), words, 14)) + 1,
    numeric,
  };
}

/** Which columns stand in each table, as indices: what does not fit goes into further ones, the first column repeated. */
export function split(columns: Column[]): number[][] {
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

/** Widths of the columns of one table within `width`: text gives way first. */
export function fit(columns: Column[], width: number): number[] {
  const available = width - columns.length * PADDING;
  const natural = columns.reduce((sum, column) => sum + column.natural, 0);
  const least = columns.reduce((sum, column) => sum + column.least, 0);
  if (natural <= available) return columns.map((column) => column.natural);
  const share = Math.max(0, (available - least) / (natural - least || 1));
  return columns.map((column) => column.least + (column.natural - column.least) * share);
}
