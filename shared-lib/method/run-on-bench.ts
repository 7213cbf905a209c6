import { runCalculation, type Calculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';

/**
 * Runs a calculation for a bench sheet and names the cell at fault instead of the calculation's field.
 *
 * @param cellOf turns a field of the calculation, e.g. `positions[2].wetsMNm`, into `rows[4].wetsMNm` or `conditions.KEY`
 * @throws InputError with the cell as its field
 */
export function runOnBench(calculation: Calculation, input: unknown, cellOf: (field: string) => string): CalculationResult {
  try {
    return runCalculation(calculation, input);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const cell = cellOf(error.field);
    throw new InputError(cell, error.value, cell === '' ? error.message : error.message.replace(error.field, lastPart(cell)));
  }
}

function lastPart(cell: string): string {
  return cell.slice(cell.lastIndexOf('.') + 1);
}
