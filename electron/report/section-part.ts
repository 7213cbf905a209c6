import type { Content, ContentText } from 'pdfmake/interfaces.js';
import { filledColumns } from '../../shared-lib/calculation/filled-columns.ts';
import type { TableColumn } from '../../shared-lib/calculation/table-column.ts';
import type { TableCell as DataCell, TableRow } from '../../shared-lib/calculation/result.ts';
import { columnDecimals, formatNumber, plainDecimals } from '../../shared-lib/quantity/format.ts';
import type { ReportSection } from '../../shared-lib/report/content.ts';
import { dataTables } from './data-table.ts';
import { figuresPart } from './figures-part.ts';
import { picturesPart } from './pictures-part.ts';
import { panelLayout, size, theme } from './look.ts';
import { swatchesPart } from './swatches-part.ts';
import { sectionOpening } from './section-opening.ts';

/**
 * One test: what was tested and how, what came out, and what the reader must know of it.
 * @param earlier the sections before it: cautions and sources that one of them has are not printed again
 */
export function sectionPart(section: ReportSection, number: number, earlier: ReportSection[]): Content[] {
  const columns = filledColumns(section.columns, section.table);
  const cautionsAt = firstWith(earlier, section, 'cautions');
  const sourcesAt = firstWith(earlier, section, 'sources');
  return [
    ...sectionOpening(section, number),
    ...flagsPart(section),
    ...swatchesPart(section.swatches ?? []),
    ...(section.tables ?? []).flatMap((table) => dataTables(subheading(table.title), table.columns.map(headOf), tableRows(table.rows, table.columns))),
    ...figuresPart(section.figures),
    ...picturesPart(section.pictures ?? []),
    ...(section.table.length > 0 && columns.length > 0 ? dataTables(subheading('Calculated, per row'), columns.map(headOf), tableRows(section.table, columns)) : []),
    ...endTogether(
      [
        notesPart(section.notes),
        section.remark ? [{ unbreakable: section.remark.length < 600, stack: [subheading('Remark'), paragraph(section.remark)] }] : [],
        cautionsAt ? [] : cautionsPart(section),
        sourcesAt ? [] : sourcesPart(section.sources),
        referencePart([...(cautionsAt ? [`Cautions as in section ${cautionsAt}.`] : []), ...(sourcesAt ? [`Sources as in section ${sourcesAt}.`] : [])]),
      ].filter((part) => part.length > 0),
      [...section.notes, section.remark, ...section.cautions.map(({ text }) => text), ...section.sources],
    ),
  ];
}

/** So much text goes on one page with room to spare. */
const TOGETHER = 3000;

/** The last lines never stand alone at the top of a page: they take along what is before them. */
function endTogether(parts: Content[][], texts: string[]): Content[] {
  if (parts.length < 2 || texts.some((text) => text.length >= 600) || texts.join('').length > TOGETHER) return parts.flat();
  const from = parts.length - 2;
  return [...parts.slice(0, from).flat(), { unbreakable: true, stack: parts.slice(from).flat() }];
}

/** Number of the first earlier section that has the same list; 0 where none has, or there is nothing to say. */
function firstWith(earlier: ReportSection[], section: ReportSection, key: 'cautions' | 'sources'): number {
  if (section[key].length === 0) return 0;
  return earlier.findIndex((other) => JSON.stringify(other[key]) === JSON.stringify(section[key])) + 1;
}

function referencePart(sentences: string[]): Content[] {
  return sentences.length > 0 ? [{ text: sentences.join(' '), style: 'quiet', margin: [0, 12, 0, 0] }] : [];
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
      table: { widths: ['*'], dontBreakRows: fitsTogether(flags.map(({ text }) => text)), body: [[{ stack: [{ text: 'Flagged', style: 'subheading', color: theme.undecided }, ...items] }]] },
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
      table: { widths: ['*'], dontBreakRows: fitsTogether(cautions.map(({ text }) => text)), body: [[{ stack: [{ text: 'Cautions', style: 'subheading', color: theme.ink }, ...items] }]] },
      layout: panelLayout(theme.quiet),
      margin: [0, 12, 0, 0],
    },
  ];
}

/** A panel or list stays whole unless it might not fit on a page. */
function fitsTogether(texts: string[]): boolean {
  return texts.length <= 20 && texts.every((text) => text.length < 300);
}

const hazardName = { toxic: 'Toxic', solvent: 'Solvent', uv: 'UV light', ozone: 'Ozone', blade: 'Blade', heat: 'Heat', 'food-contact': 'Food contact', electrical: 'Electrical' } as const;

function notesPart(notes: string[]): Content[] {
  if (notes.length === 0) return [];
  const list = (part: string[]): Content => ({ ul: part, markerColor: theme.quiet, fontSize: size.body });
  if (fitsTogether(notes)) return [{ unbreakable: true, stack: [subheading('Notes'), list(notes)] }];
  const [first, ...rest] = notes;
  // The heading stays with the first note, if that is no essay.
  return [{ unbreakable: first!.length < 600, stack: [subheading('Notes'), list([first!])] }, ...(rest.length > 0 ? [list(rest)] : [])];
}

function sourcesPart(sources: string[]): Content[] {
  if (sources.length === 0) return [];
  const text: Content[] = [{ text: 'Sources  ', bold: true }, sources.join('  ·  ')];
  return [{ unbreakable: fitsTogether(sources), stack: [{ text, style: 'quiet' }], margin: [0, 10, 0, 0] }];
}

function headOf({ title, unit }: TableColumn): string {
  return unit ? `${title} (${unit})` : title;
}

function tableRows(table: readonly TableRow[], columns: TableColumn[]): { cells: string[] }[] {
  const decimals = columns.map(({ key, decimals }) => decimals ?? columnDecimals(table.flatMap((row) => (typeof row[key] === 'number' ? [row[key]] : []))));
  return table.map((row) => ({ cells: columns.map(({ key }, index) => cellText(row[key], decimals[index]!)) }));
}

function cellText(cell: DataCell | undefined, decimals: number | null): string {
  if (cell === null || cell === undefined) return '—';
  if (typeof cell === 'number') return formatNumber(cell, decimals ?? plainDecimals(cell));
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return cell;
}
