import type { Calculation } from '../calculation/calculation.ts';
import { bondStrengthCalculation } from '../bond-strength/bond-strength.ts';
import { peelTraceCalculation } from '../bond-strength/peel-trace.ts';
import { colourDifferenceCalculation } from '../colour/colour-difference.calculation.ts';
import { fadeRetentionCalculation } from '../fade/fade-retention.calculation.ts';
import { lightExposureCalculation } from '../fade/light-exposure.calculation.ts';
import { fadeLifeCalculation } from '../fade/fade-life.calculation.ts';
import { verdictCalculation } from '../method/verdict.calculation.ts';
import { wettingFluidCalculation } from '../surface-energy/wetting-fluid.ts';

/** Every calculation that there is, in the order of the catalogue. */
export const allCalculations: readonly Calculation[] = [
  wettingFluidCalculation,
  peelTraceCalculation,
  bondStrengthCalculation,
  fadeRetentionCalculation,
  fadeLifeCalculation,
  lightExposureCalculation,
  colourDifferenceCalculation,
  verdictCalculation,
];

const byId = index(allCalculations);

/** The calculation with this id, or `undefined`. */
export function calculationById(id: string): Calculation | undefined {
  return byId.get(id);
}

/** @throws Error when two calculations bear one id: a mistake of the program, found at its start. */
function index(calculations: readonly Calculation[]): Map<string, Calculation> {
  const found = new Map<string, Calculation>();
  for (const calculation of calculations) {
    if (found.has(calculation.id)) throw new Error(`two calculations are called ${calculation.id}`);
    found.set(calculation.id, calculation);
  }
  return found;
}
