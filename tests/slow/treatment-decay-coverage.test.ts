import { describe, it } from 'vitest';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { treatmentDecayCalculation } from '../../shared-lib/surface-energy/treatment-decay.calculation.ts';
import { Coverage } from './simulate.ts';

const DAYS = [0, 1, 2, 4, 7, 10, 14, 21, 30, 45, 60];
const RUNS = 120;

/** The whole calculation, choice of the model included, on brackets of 1 mN/m. */
describe('days until the requirement', () => {
  it.each([
    { name: 'exponential to a floor', at: (days: number) => 36 + 8 * Math.exp(-0.05 * days), requiredMNm: 39, truth: Math.log(8 / 3) / 0.05 },
    { name: 'log-time', at: (days: number) => 44 - 2.5 * Math.log10(1 + days), requiredMNm: 41, truth: 10 ** (3 / 2.5) - 1 },
  ])('of a film that decays $name', ({ name, at, requiredMNm, truth }) => {
    const coverage = new Coverage(`treatment-decay, ${name}`);
    const random = seededRandom(31);
    for (let run = 0; run < RUNS; run++) {
      const readings = DAYS.map((days) => {
        const held = Math.floor(at(days) + 0.5 * random.normal());
        return { days, wetsMNm: held, retractsMNm: held + 1 };
      });
      coverage.add(runCalculation(treatmentDecayCalculation, { readings, requiredMNm }).results.daysUntilRequired!, truth);
    }
    coverage.judge();
  });
});
