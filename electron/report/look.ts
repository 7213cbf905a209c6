import type { CustomTableLayout, StyleDictionary } from 'pdfmake/interfaces.js';
import { printTheme } from '../../shared-lib/figure/theme.ts';

export const theme = printTheme;

/** A4 in points. */
export const page = { width: 595.28, height: 841.89, left: 50, right: 50, top: 60, bottom: 60 };
export const contentWidth = page.width - page.left - page.right;

export const size = { body: 9, table: 8, small: 7.5 };

export const styles: StyleDictionary = {
  title: { fontSize: 21, bold: true, lineHeight: 1.05 },
  laboratory: { fontSize: 10, bold: true, color: theme.accent },
  heading: { fontSize: 13, bold: true },
  subheading: { fontSize: size.body, bold: true, color: theme.accent },
  label: { fontSize: size.small, color: theme.quiet },
  quiet: { fontSize: size.small, color: theme.quiet },
  head: { fontSize: size.small, color: theme.quiet },
  cell: { fontSize: size.table },
};

/** Horizontal hairlines only; a firmer one under the head. */
export function ruledLayout(headerRows: number): CustomTableLayout {
  return {
    hLineWidth: (row, node) => (row === headerRows ? 0.8 : row < headerRows ? 0 : row === node.table.body.length ? 0.8 : 0.4),
    vLineWidth: () => 0,
    hLineColor: (row, node) => (row === headerRows || row === node.table.body.length ? theme.quiet : theme.rule),
    paddingLeft: (column) => (column === 0 ? 0 : 3),
    paddingRight: (column, node) => (column === node.table.widths!.length - 1 ? 0 : 3),
    paddingTop: () => 2.5,
    paddingBottom: () => 2.5,
  };
}

/** A quiet panel with a rule of `colour` at its left. */
export function panelLayout(colour: string): CustomTableLayout {
  return {
    hLineWidth: () => 0,
    vLineWidth: (column) => (column === 0 ? 2.5 : 0),
    vLineColor: () => colour,
    paddingLeft: () => 10,
    paddingRight: () => 10,
    paddingTop: () => 7,
    paddingBottom: () => 7,
    fillColor: () => '#f6f4f0',
  };
}

/** An instant as the screens write it, with its zone: '2026-03-04 09:12 UTC'; text that is no instant is printed as it is. */
export function instantText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return iso;
  const [day, time] = date.toISOString().split('T');
  return `${day} ${time!.slice(0, 5)} UTC`;
}
