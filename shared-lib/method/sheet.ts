import type { BenchReadings, BenchRow, CellValue, Limit, Method } from './method.ts';

/** Rows in which every required field has a value, with the index they have on the bench sheet. */
export function completeRows(method: Method, bench: BenchReadings): { row: BenchRow; index: number }[] {
  const required = method.readings.fields.filter((field) => field.required);
  return bench.rows
    .map((row, index) => ({ row, index }))
    .filter(({ row }) => required.every((field) => row.values[field.key] != null));
}

/** The limit set on a property, if any. */
export function limitOn(bench: BenchReadings, property: string): Limit | undefined {
  return bench.limits.find((limit) => limit.property === property);
}

/** A number from a cell or a condition; `undefined` when it is empty. */
export function numberIn(values: Record<string, CellValue>, key: string): number | undefined {
  const value = values[key];
  return typeof value === 'number' ? value : undefined;
}

/** A text from a cell or a condition; `undefined` when it is empty. */
export function textIn(values: Record<string, CellValue>, key: string): string | undefined {
  const value = values[key];
  return typeof value === 'string' && value !== '' ? value : undefined;
}
