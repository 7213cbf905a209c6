import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';

/** Our own choice: water with diiodomethane has 1.9, water with glycerol 8; from 10 on one degree can move a part by several mN/m. */
const doubtfulFrom = 10;
/** Our own choice: here a tenth of a degree decides the result. */
const hopelessFrom = 100;

/**
 * Flags liquids so alike that errors of the angles are magnified.
 * @throws InputError when they are too alike for any answer
 */
export function refuseIllConditioned(condition: number | null): Flag[] {
  if (condition === null || condition < doubtfulFrom) return [];
  if (!(condition < hopelessFrom)) {
    throw new InputError(
      'liquids',
      null,
      'These liquids are too alike for this model; add one of another kind, such as water beside diiodomethane.',
    );
  }
  return [
    {
      code: 'ill-conditioned',
      where: 'liquids',
      text: `The liquids are alike (condition number ${formatNumber(condition, 0)}): small errors of the angles become large ones of the result.`,
    },
  ];
}
