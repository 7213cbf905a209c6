import { describe, it } from 'vitest';
import { bondBuildCalculation } from '../../shared-lib/bond-strength/bond-build.calculation.ts';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { Coverage } from './simulate.ts';

const HOURS = [1, 2, 4, 8, 12, 18, 24, 36, 48, 72, 96, 120];
const RUNS = 250;

/** The whole calculation, choice of the model included; requirement 2.4 N/15 mm. */
describe('hours until the requirement', () => {
  it.each([
    { name: 'first order', lag: 0, tearsAt: Infinity },
    { name: 'first order after a lag of 6 h', lag: 6, tearsAt: Infinity },
    { name: 'first order, films that tear at 2.95 N/15 mm', lag: 0, tearsAt: 2.95 },
  ])('$name', ({ name, lag, tearsAt }) => {
    const coverage = new Coverage(`bond-build, ${name}`);
    const random = seededRandom(32);
    const truth = lag + Math.log(2.7 / 0.6) / 0.05;
    for (let run = 0; run < RUNS; run++) {
      const readings = HOURS.map((hours) => {
        const bond = Math.max(0, 3 - 2.7 * Math.exp(-0.05 * Math.max(0, hours - lag)) + 0.08 * random.normal());
        return bond > tearsAt ? { hours, strengthNPer15mm: tearsAt, mode: 'film-tear' } : { hours, strengthNPer15mm: bond, mode: 'adhesive' };
      });
      coverage.add(runCalculation(bondBuildCalculation, { readings, requiredNPer15mm: 2.4 }).results.hoursUntilRequired!, truth);
    }
    coverage.judge();
  });
});
