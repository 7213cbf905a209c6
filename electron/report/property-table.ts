import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { layoutStrip } from '../../shared-lib/figure/strip-layout.ts';
import { stripSvg } from '../../shared-lib/figure/strip-svg.ts';
import type { PropertyLine } from '../../shared-lib/notebook/views.ts';
import { decimalColumn } from './decimal-column.ts';
import { ruledLayout, size, theme } from './look.ts';
import { titleRow } from './title-row.ts';
import { verdictText } from './verdict-text.ts';

/** A line of the table: what it is called here, the property, and the group it stands in ('' for none). */
export interface PropertyRow {
  group: string;
  name: string;
  line: PropertyLine;
}

const STRIP = { width: 92, height: 19 };
const WIDTHS = ['*', 46, 36, 54, 14, 38, 56, STRIP.width];

/** Value, unit, interval, number of readings, limit, verdict and strip of each property; `title` '' for none. */
export function propertyTable(title: string, rows: PropertyRow[]): Content {
  const values = decimalColumn(rows.map(({ line }) => withoutUnit(line.text, line.unit)), size.table);
  const intervalName = commonIntervalName(rows);
  const heads = ['Property', 'Value', 'Unit', intervalName || 'Interval', 'n', 'Limit', 'Verdict', 'Readings, interval, limit'];
  const right = new Set([1, 4]);
  const head = heads.map((text, index): TableCell => ({ text, style: 'head', alignment: right.has(index) ? 'right' : 'left', verticalAlignment: 'bottom' }));
  const body = rows.flatMap((row, index): TableCell[][] => {
    const { line } = row;
    const cells: TableCell[] = [
      { text: row.name, style: 'cell', margin: [row.group ? 8 : 0, 4, 0, 0] },
      { ...values[index]!, bold: true, margin: withTop(values[index]!.margin) },
      { text: line.unit, style: 'cell', margin: [0, 4, 0, 0] },
      { text: intervalName ? line.intervalText.slice(intervalName.length).trim() : line.intervalText, style: 'cell', margin: [0, 4, 0, 0] },
      { text: String(line.n), style: 'cell', alignment: 'right', margin: [0, 4, 0, 0] },
      { text: withoutUnit(line.limitText, line.unit), style: 'cell', margin: [0, 4, 0, 0] },
      { stack: [verdictText(line.verdict.verdict, size.table)], margin: [0, 4, 0, 0] },
      line.strip === null ? { text: '' } : { svg: stripSvg(layoutStrip(line.strip, STRIP.width, STRIP.height), theme), width: STRIP.width },
    ];
    return startsGroup(rows, index) ? [groupRow(row.group), cells] : [cells];
  });
  const top = title === '' ? [head] : [titleRow({ text: title, style: 'heading', outline: true, margin: [0, 0, 0, 3] }, WIDTHS.length), head];
  return { table: { headerRows: top.length, keepWithHeaderRows: 1, dontBreakRows: true, widths: WIDTHS, body: [...top, ...body] }, layout: ruledLayout(top.length) };
}

function startsGroup(rows: PropertyRow[], index: number): boolean {
  return rows[index]!.group !== '' && rows[index]!.group !== rows[index - 1]?.group;
}

function groupRow(text: string): TableCell[] {
  return titleRow({ text, style: 'cell', bold: true, margin: [0, 4, 0, 0] }, WIDTHS.length);
}

/** The name of the interval when all lines that have one share it; it then stands in the head. */
function commonIntervalName(rows: PropertyRow[]): string {
  const names = new Set(rows.flatMap(({ line }) => (line.intervalText ? [/^(?:[\d.]+ % interval|range)(?= )/u.exec(line.intervalText)?.[0] ?? ''] : [])));
  return names.size === 1 ? [...names][0]! : '';
}

function withoutUnit(text: string, unit: string): string {
  return unit !== '' && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}

/** The text of a row stands level with the middle of its strip. */
function withTop(margin: unknown): [number, number, number, number] {
  const [left, , right] = margin as [number, number, number, number];
  return [left, 4, right, 0];
}
