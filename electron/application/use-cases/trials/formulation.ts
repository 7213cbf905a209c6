import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { runCalculation } from '../../../../shared-lib/calculation/calculation.ts';
import type { CalculationResult } from '../../../../shared-lib/calculation/result.ts';
import { formulationCalculation } from '../../../../shared-lib/liquid/formulation.calculation.ts';
import type { Workplace } from '../../workplace.ts';

/** Nothing is recorded: what if this were let down, rebalanced, held? */
export function calculateFormulation(_workplace: Workplace, input: ParsedInput<'formulation.calculate'>): CalculationResult {
  return runCalculation(formulationCalculation, input);
}
