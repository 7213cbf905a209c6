import type { Content, ContentText } from 'pdfmake/interfaces.js';
import type { ReadingsTable } from '../../shared-lib/report/content.ts';
import { dataTables } from './data-table.ts';
import { instantText, size } from './look.ts';

/** The readings as they were entered: voided rows struck through with their reason, corrections with what stood before. */
export function appendixPart(tables: ReadingsTable[]): Content[] {
  if (tables.length === 0) return [];
  return [
    { text: 'Appendix: readings as entered', style: 'heading', outline: true, pageBreak: 'before', margin: [0, 0, 0, 2] },
    { text: 'Rows struck through were voided by the person at the bench and do not count; they are kept with the reason.', style: 'quiet' },
    ...tables.flatMap(readings),
  ];
}

function readings(table: ReadingsTable): Content[] {
  // A field in which nothing was entered takes no column.
  const used = table.columns.map((_, index) => index).filter((index) => index === 0 || table.rows.some(({ cells }) => cells[index] !== ''));
  const heads = used.map((index) => table.columns[index]!).map(({ title, unit }) => (unit ? `${title} (${unit})` : title));
  const rows = table.rows.map(({ cells, voided, remark }) => ({
    cells: used.map((index) => cells[index]!),
    struck: voided !== '',
    notes: [...(voided ? [`voided: ${voided}`] : []), ...(remark ? [`remark: ${remark}`] : [])],
  }));
  const heading: ContentText = { text: table.heading, fontSize: size.body + 1, bold: true, margin: [0, 14, 0, 3] };
  return [
    ...(rows.length > 0 ? dataTables(heading, heads, rows) : [heading, { text: 'No readings.', style: 'quiet' }]),
    ...corrections(table.corrections),
  ];
}

function corrections(list: ReadingsTable['corrections']): Content[] {
  if (list.length === 0) return [];
  const rows = list.map(({ where, before, after, reason, by, at }) => ({ cells: [where, before, after, reason, by, instantText(at)] }));
  return dataTables({ text: 'Corrections', style: 'subheading', margin: [0, 8, 0, 2] }, ['Where', 'Before', 'After', 'Reason', 'By', 'At'], rows);
}
