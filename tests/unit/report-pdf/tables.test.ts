import { describe, expect, it } from 'vitest';
import type { Content, ContentTable, ContentText } from 'pdfmake/interfaces.js';
import { dataTables, type DataRow } from '../../../electron/report/data-table.ts';
import { decimalColumn, isNumberText } from '../../../electron/report/decimal-column.ts';
import { contentWidth } from '../../../electron/report/look.ts';
import { textWidth } from '../../../electron/report/typeface.ts';

describe('decimalColumn', () => {
  it('sets decimal points under one another', () => {
    const texts = ['38', '40.25', '−7.5', '≥ 3.1'];
    const points = decimalColumn(texts, 8).map((cell, index) => {
      const [, , right] = cell.margin as number[];
      return right! + textWidth(/[.].*$/.exec(texts[index]!)?.[0] ?? '', 8);
    });
    for (const point of points) expect(point).toBeCloseTo(points[0]!, 6);
  });

  it('takes signs and bounds as numbers and words as words', () => {
    expect(['−0.5', '≥ 3.1', '1 234.5', '12,5'].map(isNumberText)).toEqual([true, true, true, true]);
    expect(['', '3 of 8', 'between 38 and 40', '3 N'].map(isNumberText)).toEqual([false, false, false, false]);
  });
});

describe('textWidth', () => {
  it('is the advance width of the typeface: its figures are 497 thousandths wide, all alike', () => {
    for (const digit of '0123456789') expect(textWidth(digit, 10)).toBeCloseTo(4.97, 6);
  });
});

describe('dataTables', () => {
  const title: ContentText = { text: 'A table' };
  const heads = (count: number) => Array.from({ length: count }, (_, index) => `Column ${index}`);
  const row = (count: number, text: string) => ({ cells: Array.from({ length: count }, (_, index) => `${text}${index}`) });
  const tables = (count: number, text: string) => dataTables(title, heads(count), [row(count, text)]) as ContentTable[];
  const used = (table: ContentTable) => (table.table.widths as (number | string)[]).reduce<number>((sum, width) => sum + (typeof width === 'number' ? width + 6 : 0), 0);

  it('keeps a small table in one piece', () => {
    expect(tables(4, 'x')).toHaveLength(1);
  });

  it('parts a wide table into pieces that fit, each with the first column, none left out', () => {
    const parts = tables(30, 'wide content ');
    expect(parts.length).toBeGreaterThan(1);
    const shown = parts.flatMap((part) => part.table.body[1]!.map((cell) => (cell as ContentText).text as string).filter(Boolean));
    expect(new Set(shown)).toEqual(new Set(heads(30)));
    expect(shown.filter((text) => text === 'Column 0')).toHaveLength(parts.length);
    for (const part of parts) expect(used(part)).toBeLessThanOrEqual(contentWidth + 0.01);
  });

  it('gives way in long texts, not in numbers', () => {
    const [part] = dataTables(title, ['No.', 'Remark', 'Value'], [{ cells: ['1', 'word '.repeat(2000), '123.456'] }]) as ContentTable[];
    expect(used(part!)).toBeLessThanOrEqual(contentWidth);
    expect((part!.table.widths as number[])[2]!).toBeGreaterThanOrEqual(textWidth('123.456', 8));
    expect(part!.table.dontBreakRows).toBe(false);
  });

  it('strikes a voided row through and says why below it', () => {
    const [part] = dataTables(title, ['No.', 'Value'], [{ cells: ['1', '3.5'], struck: true, notes: ['voided: film creased'] }]) as ContentTable[];
    const [, , struck, note] = part!.table.body;
    expect((struck as ContentText[]).slice(0, 2).map((cell) => cell.decoration)).toEqual(['lineThrough', 'lineThrough']);
    expect((note as ContentText[])[0]!.text).toBe('voided: film creased');
  });

  const numbered = (count: number, part: Partial<DataRow> = {}) => Array.from({ length: count }, (_, index) => ({ cells: [String(index + 1), '3.5'], ...part }));
  /** The first column of the blocks of each pair; empty where a table is in one piece. */
  const blocksOf = (rows: DataRow[], heads = ['No.', 'Value']) =>
    dataTables(title, heads, rows).map((content) => {
      const columns = (content as { stack?: [Content, { columns: { stack: [ContentTable] }[] }] }).stack?.[1].columns ?? [];
      return columns.map(({ stack: [{ table }] }) => table.body.slice(table.headerRows).map((cells) => (cells[0] as ContentText).text as string));
    });

  it('lays a long narrow table in two blocks, every row once, read down the left block first', () => {
    const [pair] = blocksOf(numbered(13));
    expect(pair!.map((block) => block.length)).toEqual([7, 6]);
    const long = blocksOf(numbered(95));
    expect(long.flat(2)).toEqual(Array.from({ length: 95 }, (_, index) => String(index + 1)));
    for (const block of long.flat()) expect(block.length).toBeLessThanOrEqual(20);
    expect(blocksOf(numbered(41)).map((blocks) => blocks.length)).toEqual([2, 1]);
  });

  it('keeps in one piece what is short, wide, or has rows of several lines', () => {
    expect(blocksOf(numbered(9))).toEqual([[]]);
    expect(blocksOf(numbered(13, { cells: heads(8) }), heads(8))).toEqual([[]]);
    expect(blocksOf(numbered(13, { notes: ['voided: a long reason '.repeat(20)] }))).toEqual([[]]);
    expect(blocksOf(numbered(13, { cells: ['1', 'a long text '.repeat(12)] }))).toEqual([[]]);
  });

  it('breaks a head before its unit, not within it', () => {
    const [part] = dataTables(title, ['Holds for two seconds (mN/m)', 'Density'], [{ cells: ['38', '1.2'] }]) as ContentTable[];
    expect((part!.table.body[1] as ContentText[]).map(({ text }) => text)).toEqual(['Holds for two seconds\n(mN/m)', 'Density', '']);
  });
});
