import type { ContentText, TableCell, TableCellProperties } from 'pdfmake/interfaces.js';

/** A row of one cell across `columns` columns. As a head row it stays with its table and comes again on each page. */
export function titleRow(title: ContentText & TableCellProperties, columns: number): TableCell[] {
  return [{ ...title, colSpan: columns }, ...Array.from({ length: columns - 1 }, () => ({}))];
}
