import { formatNumber, plainDecimals } from '../../shared-lib/quantity/format.ts';
import type { TableColumn } from '../../shared-lib/calculation/table-column.ts';
import type { TableCell, TableRow } from '../../shared-lib/calculation/result.ts';
import { alignDecimals } from './align-decimals.ts';

/** The cells of a calculation's table as text, row by row, and which columns are numbers set at the decimal sign. */
export function tableCells(columns: TableColumn[], rows: TableRow[]): { rows: string[][]; numeric: boolean[] } {
  const byColumn = columns.map((column) => alignDecimals(rows.map((row) => cellText(row[column.key], column.decimals))));
  return {
    rows: rows.map((_, index) => byColumn.map((column) => column[index]!)),
    numeric: columns.map((column) => rows.some((row) => typeof row[column.key] === 'number')),
  };
}

function cellText(cell: TableCell | undefined, decimals: number | undefined): string {
  if (cell === null || cell === undefined) return '—';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell === 'string') return cell;
  return formatNumber(cell, decimals ?? plainDecimals(cell));
}
