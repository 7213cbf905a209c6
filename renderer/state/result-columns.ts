import type { TableColumn } from '../../shared-lib/calculation/calculation.ts';
import type { CalculationResult } from '../../shared-lib/calculation/result.ts';

export function resultColumns(result: CalculationResult): TableColumn[] {
  return Object.keys(result.table[0] ?? {}).map((key) => ({ key, title: key }));
}
