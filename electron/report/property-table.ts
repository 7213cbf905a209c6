import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { layoutStrip } from '../../shared-lib/figure/strip-layout.ts';
import { stripSvg } from '../../shared-lib/figure/strip-svg.ts';
import type { PropertyLine } from '../../shared-lib/notebook/views.ts';
import { decimalColumn } from './decimal-column.ts';
import { contentWidth, ruledLayout, size, theme } from './look.ts';
import { titleRow } from './title-row.ts';
import { textWidth } from './typeface.ts';
import { verdictText } from './verdict-text.ts';

/** A line of the table: what it is called here, the property, and the group it stands in ('' for none). */
export interface PropertyRow {
  group: string;
  name: string;
  line: PropertyLine;
}

const STRIP = { width: 92, height: 19 };
/** Between two columns, in points. */
const PADDING = 6;
const UNIT = 36;
const COUNT = 14;
const LIMIT = 40;
const VERDICT = 56;
/** The first row of a group carries the group's name above it, so that no name is left alone at the foot of a page. */
const GROUP_LINE = 13;

/** Value, unit, interval, number of readings, limit, verdict and strip of each property; `title` '' for none. */
export function propertyTable(title: string, rows: PropertyRow[]): Content {
  const texts = rows.map(({ line }) => unbroken(withoutUnit(line.text, line.unit), /^between /));
  const values = decimalColumn(texts, size.table);
  const intervalName = commonIntervalName(rows);
  const heads = ['Property', 'Value', 'Unit', intervalName.replace('range', 'Range') || 'Interval', 'n', 'Limit', 'Verdict', 'Readings, interval, limit'];
  const intervals = rows.map(({ line }) => unbroken((intervalName ? line.intervalText.slice(intervalName.length).trim() : line.intervalText) || whyNone(line), /^.* (?:interval|range) /));
  const widths = columnWidths(texts, intervals);
  const right = new Set([1, 4]);
  const head = heads.map((text, index): TableCell => ({ text, style: 'head', alignment: right.has(index) ? 'right' : 'left', verticalAlignment: 'bottom' }));
  const body = rows.map((row, index): TableCell[] => {
    const { line } = row;
    const group = startsGroup(rows, index) ? row.group : '';
    const above = group === '' ? 0 : GROUP_LINE;
    const margin: [number, number, number, number] = [0, above + 4, 0, 0];
    return [
      nameCell(row, group),
      { ...values[index]!, bold: true, margin: [0, above + 4, (values[index]!.margin as number[])[2]!, 0] },
      { text: line.unit, style: 'cell', margin },
      { text: intervals[index]!, style: 'cell', margin },
      { text: String(line.n), style: 'cell', alignment: 'right', margin },
      { text: withoutUnit(line.limitText, line.unit), style: 'cell', margin },
      { stack: [verdictText(line.verdict.verdict, size.table)], margin },
      line.strip === null ? { text: '' } : { svg: stripSvg(layoutStrip(line.strip, STRIP.width, STRIP.height), theme), width: STRIP.width, margin: [0, above, 0, 0] },
    ];
  });
  const top = title === '' ? [head] : [titleRow({ text: title, style: 'heading', outline: true, margin: [0, 0, 0, 3] }, widths.length), head];
  return { table: { headerRows: top.length, keepWithHeaderRows: 1, dontBreakRows: true, widths, body: [...top, ...body] }, layout: ruledLayout(top.length) };
}

/** Values and intervals get the width they need, within bounds; the names get the rest. */
function columnWidths(values: string[], intervals: string[]): number[] {
  const between = (least: number, most: number, texts: string[], cut: 'regular' | 'semibold') => Math.min(most, Math.max(least, ...texts.map((text) => textWidth(text, size.table, cut) + 1)));
  const others = [between(40, 84, values, 'semibold'), UNIT, between(44, 60, intervals, 'regular'), COUNT, LIMIT, VERDICT, STRIP.width];
  return [contentWidth - others.reduce((sum, width) => sum + width + PADDING, 0), ...others];
}

/** Two ends stay on one line; only behind their name may it break. */
function unbroken(text: string, name: RegExp): string {
  const [before = ''] = name.exec(text) ?? [];
  const ends = text.slice(before.length);
  return before === '' && !/^\S+ (?:to|and) \S+$/.test(ends) ? text : before + ends.replaceAll(' ', '\u00a0');
}

/** The name of a group runs on over the columns beside it, if it fits on one line. */
function nameCell({ name, group: inGroup }: PropertyRow, group: string): TableCell {
  const indent = inGroup === '' ? 0 : 8;
  if (group === '') return { text: name, style: 'cell', margin: [indent, 4, 0, 0] };
  return {
    stack: [
      { text: group, style: 'cell', bold: true, noWrap: textWidth(group, size.table, 'semibold') < contentWidth - 10, margin: [0, 3, 0, 0] },
      { text: name, style: 'cell', margin: [indent, 3.4, 0, 0] },
    ],
  };
}

function startsGroup(rows: PropertyRow[], index: number): boolean {
  return rows[index]!.group !== '' && rows[index]!.group !== rows[index - 1]?.group;
}

/** Why a line has no interval; '' where its own text says so: a bound, a bracket, words. */
function whyNone({ n, text, unit }: PropertyLine): string {
  if (!/^[−\d]/u.test(withoutUnit(text, unit))) return '';
  return n === 1 ? 'none: 1 reading' : 'none';
}

/** The name of the interval when all lines that have one share it; it then stands in the head. */
function commonIntervalName(rows: PropertyRow[]): string {
  const names = new Set(rows.flatMap(({ line }) => (line.intervalText ? [/^(?:[\d.]+ % interval|range)(?= )/u.exec(line.intervalText)?.[0] ?? ''] : [])));
  return names.size === 1 ? [...names][0]! : '';
}

function withoutUnit(text: string, unit: string): string {
  return unit !== '' && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}
