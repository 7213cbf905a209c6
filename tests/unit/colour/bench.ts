import type { BenchReadings, CellValue, Limit } from '../../../shared-lib/method/method.ts';

export type Cells = Record<string, CellValue>;

/** A bench sheet with these rows and conditions. */
export function bench(rows: Cells[], conditions: Cells = {}, limits: Limit[] = []): BenchReadings {
  return { conditions, rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })), limits, traces: {} };
}
