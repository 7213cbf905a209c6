import type { TableColumn } from '../../shared-lib/calculation/calculation.ts';
import type { CalculationResult } from '../../shared-lib/calculation/result.ts';
import { calculationById } from '../../shared-lib/registry/calculations.ts';

/** The columns of a live result's table, as the calculation titles them. */
export function resultColumns(result: CalculationResult): TableColumn[] {
  return calculationById(result.calculation)?.columns ?? [];
}
