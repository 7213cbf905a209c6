import { describe, it } from 'vitest';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { heatResistanceCalculation } from '../../shared-lib/mechanical/heat-resistance.calculation.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { Coverage } from './simulate.ts';

const RUNS = 1500;
/** Specimens fail at temperatures of a logistic distribution about 152 °C; 5 % of them below T50 − ln 19 · spread. */
const T50 = 152;

/** The whole calculation, bounds of steps that do not mix included; these are conservative and raise the share. */
describe.each([
  { spreadC: 8, perStep: 5, step: 10 },
  { spreadC: 8, perStep: 10, step: 10 },
  { spreadC: 5, perStep: 20, step: 5 },
])('temperatures of failure, spread $spreadC °C, $perStep specimens every $step °C', ({ spreadC, perStep, step }) => {
  it('are held by their intervals', () => {
    const random = seededRandom(100 * spreadC + perStep);
    const named = `heat-resistance, spread ${spreadC} °C, ${perStep} every ${step} °C`;
    const [t50, t05] = [new Coverage(`${named}, t50`), new Coverage(`${named}, t05`)];
    for (let run = 0; run < RUNS; run++) {
      const first = 110 + step * random.uniform();
      const steps = Array.from({ length: Math.round(90 / step) }, (_, index) => {
        const celsius = first + step * index;
        const share = 1 / (1 + Math.exp(-(celsius - T50) / spreadC));
        return { celsius, tested: perStep, failed: Array.from({ length: perStep }, () => random.uniform() < share).filter(Boolean).length };
      });
      const { results } = runCalculation(heatResistanceCalculation, { steps });
      t50.add(results.t50!, T50);
      if (results.t05!.value !== null) t05.add(results.t05!, T50 - Math.log(19) * spreadC);
    }
    t50.judge();
    t05.judge();
  });
});
