import { describe, it } from 'vitest';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { fadeLifeCalculation } from '../../shared-lib/fade/fade-life.calculation.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { Coverage } from './simulate.ts';

const HOURS = [24, 48, 72, 96, 144, 192, 240];
const RUNS = 250;

/** The whole calculation, choice of the model included; limit 70 % retained. */
describe('exposure to the limit', () => {
  it.each([
    { name: 'zero order', at: (hours: number) => 1 - 0.0016 * hours, truth: 0.3 / 0.0016 },
    { name: 'first order', at: (hours: number) => Math.exp(-0.0024 * hours), truth: -Math.log(0.7) / 0.0024 },
    { name: 'first order, the limit half as far again as the readings', at: (hours: number) => Math.exp(-0.001 * hours), truth: -Math.log(0.7) / 0.001 },
    { name: 'stretched', at: (hours: number) => Math.exp(-((hours / 500) ** 0.7)), truth: 500 * (-Math.log(0.7)) ** (1 / 0.7) },
  ])('of a print that fades by $name', ({ name, at, truth }) => {
    const coverage = new Coverage(`fade-life, ${name}`);
    const random = seededRandom(34);
    for (let run = 0; run < RUNS; run++) {
      const readings = [{ exposure: 0, retained: 1 }, ...HOURS.map((exposure) => ({ exposure, retained: at(exposure) + 0.01 * random.normal() }))];
      coverage.add(runCalculation(fadeLifeCalculation, { readings }).results.exposureToLimit!, truth);
    }
    coverage.judge();
  });
});
