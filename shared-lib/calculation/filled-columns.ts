import type { TableRow } from './result.ts';
import type { TableColumn } from './table-column.ts';

/** The columns in which any row holds something; those that these readings left empty are not shown. */
export function filledColumns(columns: readonly TableColumn[], rows: readonly TableRow[]): TableColumn[] {
  return columns.filter(({ key }) => rows.some((row) => row[key] !== undefined && row[key] !== null));
}
