import type { BenchReadings, BenchRow, CellValue, Field, Limit, Method } from './method.ts';

/** Rows in which every required field has a value, with the index they have on the bench sheet. */
export function completeRows(method: Method, bench: BenchReadings): { row: BenchRow; index: number }[] {
  const required = method.readings.fields.filter((field) => field.required);
  return bench.rows
    .map((row, index) => ({ row, index }))
    .filter(({ row }) => required.every((field) => row.values[field.key] != null));
}

/** Whether a condition is asked for: not while another one names something of the notebook that says it. */
export function isAsked(field: Pick<Field, 'unlessFrom'>, conditions: Record<string, CellValue | undefined>, isKept: (value: string) => boolean): boolean {
  const other = field.unlessFrom === undefined ? undefined : conditions[field.unlessFrom];
  return typeof other !== 'string' || !isKept(other);
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
