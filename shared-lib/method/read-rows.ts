import type { BenchReadings, CellValue } from './method.ts';

/** A row of the sheet in which something was read. */
export interface ReadRow {
  values: Record<string, CellValue>;
  /** Its place on the sheet, blank and voided rows counted. */
  index: number;
}

/** The rows in which one of these fields has a value: what is carried down or says where the specimen was cut begins no row. */
export function readRows(bench: BenchReadings, keys: readonly string[]): ReadRow[] {
  return bench.rows.map(({ values }, index) => ({ values, index })).filter(({ values }) => keys.some((key) => (values[key] ?? '') !== ''));
}
