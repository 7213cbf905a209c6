import type { BenchReadings, CellValue, Method } from '../../../shared-lib/method/method.ts';

/** A sheet as the program hands it over: conditions with their defaults, rows in their places. */
export function benchOf(method: Method, rows: Record<string, CellValue>[], conditions: Record<string, CellValue> = {}): BenchReadings {
  const defaults = Object.fromEntries(method.conditions.flatMap((field) => ('default' in field && field.default !== undefined ? [[field.key, field.default]] : [])));
  return { conditions: { ...defaults, ...conditions }, rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })), limits: [], traces: {} };
}
