import type { Content, ContentTable, ContentText } from 'pdfmake/interfaces.js';
import type { TableColumn } from '../../shared-lib/calculation/calculation.ts';
import type { TableCell as DataCell } from '../../shared-lib/calculation/result.ts';
import { formatNumber, plainDecimals } from '../../shared-lib/quantity/format.ts';
import type { ReportSection } from '../../shared-lib/report/content.ts';
import { dataTables } from './data-table.ts';
import { figuresPart } from './figures-part.ts';
import { keyValues } from './key-values.ts';
import { contentWidth, instantText, panelLayout, size, theme } from './look.ts';
import { propertyTable } from './property-table.ts';

/** One test: what was tested and how, what came out, and what the reader must know of it. */
export function sectionPart(section: ReportSection, number: number): Content[] {
  const { method } = section;
  const columns = section.columns.filter((column) => section.table.some((row) => row[column.key] !== undefined && row[column.key] !== null));
  return [
    {
      unbreakable: true,
      stack: [
        rule(),
        { text: `${number}  ${section.heading}`, style: 'heading', outline: true, margin: [0, 10, 0, 1] },
        { text: [method.title, ...method.standards].join(' · '), fontSize: size.body },
      ],
      margin: [0, 22, 0, 2],
    },
    { text: method.shows, style: 'quiet', margin: [0, 0, 0, 6] },
    { columns: [{ width: '55%', ...what(section) }, { width: '*', ...how(section) }], columnGap: 14, margin: [0, 0, 0, 8] },
    ...(section.lines.length > 0 ? [propertyTable('', section.lines.map((line) => ({ group: '', name: line.title, line })))] : []),
    ...flagsPart(section),
    ...figuresPart(section.figures),
    ...(section.table.length > 0 && columns.length > 0
      ? dataTables(subheading('Calculated, per row'), columns.map(headOf), section.table.map((row) => ({ cells: columns.map((column) => cellText(row[column.key], column)) })))
      : []),
    ...listPart('Notes', section.notes),
    ...(section.remark ? [subheading('Remark'), paragraph(section.remark)] : []),
    ...cautionsPart(section),
    ...listPart('Sources', section.sources, 'quiet'),
  ];
}

function what({ sample }: ReportSection): ContentTable {
  return keyValues(
    [
      ['Sample', sample.code],
      ['Product', sample.product],
      ['Job', sample.job],
      ['Roll', sample.roll],
      ['Materials', sample.materials.join('\n')],
    ],
    52,
  );
}

function how({ method, conditions, testedBy, testedAt }: ReportSection): ContentTable {
  return keyValues(
    [
      ['Tested by', testedBy],
      ['Tested', instantText(testedAt)],
      ...conditions.map(({ label, value }): [string, string] => [label, value]),
      ['Method', `version ${method.version}`],
      ['Calculation', `${method.calculation}, version ${method.calculationVersion}`],
    ],
    80,
  );
}

function rule(): Content {
  return { canvas: [{ type: 'line', x1: 0, y1: 0, x2: contentWidth, y2: 0, lineWidth: 0.8, lineColor: theme.accent }] };
}

function subheading(text: string): ContentText {
  return { text, style: 'subheading', margin: [0, 12, 0, 3] };
}

function paragraph(text: string): Content {
  return { text, fontSize: size.body, lineHeight: 1.12 };
}

function flagsPart({ flags }: ReportSection): Content[] {
  if (flags.length === 0) return [];
  const items = flags.map(({ where, text }): Content => ({ text: where ? [{ text: `${where}  `, bold: true }, text] : text, fontSize: size.body, margin: [0, 1.5, 0, 0] }));
  return [
    {
      table: { widths: ['*'], dontBreakRows: fitsTogether(flags), body: [[{ stack: [{ text: 'Flagged', style: 'subheading', color: theme.undecided }, ...items] }]] },
      layout: panelLayout(theme.undecided),
      margin: [0, 10, 0, 0],
    },
  ];
}

function cautionsPart({ cautions }: ReportSection): Content[] {
  if (cautions.length === 0) return [];
  const items = cautions.map(({ hazard, text }): Content => ({ text: [{ text: `${hazardName[hazard]}  `, bold: true }, text], fontSize: size.small, margin: [0, 1.5, 0, 0] }));
  return [
    {
      table: { widths: ['*'], dontBreakRows: fitsTogether(cautions), body: [[{ stack: [{ text: 'Cautions', style: 'subheading', color: theme.ink }, ...items] }]] },
      layout: panelLayout(theme.quiet),
      margin: [0, 12, 0, 0],
    },
  ];
}

/** A panel stays whole unless it might not fit on a page. */
function fitsTogether(items: { text: string }[]): boolean {
  return items.length <= 20 && items.every(({ text }) => text.length < 200);
}

const hazardName = { toxic: 'Toxic', solvent: 'Solvent', uv: 'UV light', ozone: 'Ozone', blade: 'Blade', heat: 'Heat', 'food-contact': 'Food contact', electrical: 'Electrical' } as const;

function listPart(title: string, items: string[], style = ''): Content[] {
  if (items.length === 0) return [];
  const list = (part: string[]): Content => ({ ul: part, markerColor: theme.quiet, ...(style ? { style } : { fontSize: size.body }) });
  const [first, ...rest] = items;
  // The heading stays with the first item, if that is no essay.
  const start: Content = { unbreakable: first!.length < 600, stack: [subheading(title), list([first!])] };
  return rest.length > 0 ? [start, list(rest)] : [start];
}

function headOf({ title, unit }: TableColumn): string {
  return unit ? `${title} (${unit})` : title;
}

function cellText(cell: DataCell | undefined, column: TableColumn): string {
  if (cell === null || cell === undefined) return '—';
  if (typeof cell === 'number') return formatNumber(cell, column.decimals ?? plainDecimals(cell));
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return cell;
}
