import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { heatResistanceCalculation } from '../../../shared-lib/mechanical/heat-resistance.calculation.ts';

const run = (steps: [number, number, number][]) => runCalculation(heatResistanceCalculation, { steps: steps.map(([celsius, tested, failed]) => ({ celsius, tested, failed })) });

/* Beetles of C. I. Bliss (1935): the log dose, times 100, stands for the temperature. −60.72 and 34.27 as in A. J. Dobson's
   table (from memory): half at 60.717/34.270 = 1.77173, a twentieth at (60.717 − ln 19)/34.270 = 1.68581. */
it('the published dose–response example', () => {
  const dose = [169.07, 172.42, 175.52, 178.42, 181.13, 183.69, 186.1, 188.39];
  const [tested, failed] = [[59, 60, 62, 56, 63, 59, 62, 60], [6, 13, 18, 28, 52, 53, 61, 60]];
  const { t50, t05 } = run(dose.map((at, index) => [at, tested[index]!, failed[index]!])).results;
  expect(t50!.value).toBeCloseTo(177.173, 2);
  expect(t05!.value).toBeCloseTo(168.581, 2);
  expect(t50).toMatchObject({ level: 0.95, n: 481, bound: 'exact' });
});

/* Exact binomial arithmetic: 0.5⁵ = 3.1 % < 5 % < 0.5⁴; 0.95⁵⁹ = 4.8 % < 5 % < 0.95⁵⁸ (the 'rule of 59', common practice). */
describe('steps that do not mix give bounds, by the binomial distribution', () => {
  it('five that pass bound the temperature for half, four do not', () => {
    expect(run([[120, 5, 0], [130, 5, 0]]).results.t50).toMatchObject({ value: 130, low: 130, high: null, bound: 'at-least' });
    expect(run([[120, 4, 0], [130, 4, 0]]).results.t50).toMatchObject({ value: 120, bound: 'at-least' });
    expect(run([[120, 2, 0], [130, 2, 0]]).results.t50).toMatchObject({ value: null, bound: 'at-least' });
  });

  it('59 that pass bound the temperature for a twentieth, 58 do not', () => {
    expect(run([[120, 1, 0], [130, 59, 0]]).results.t05).toMatchObject({ value: 130, bound: 'at-least' });
    expect(run([[120, 1, 0], [130, 58, 0]]).results.t05).toMatchObject({ value: 120, bound: 'at-least' });
    expect(run([[120, 29, 0], [130, 29, 0]]).results.t05!.value).toBeNull();
  });

  it('all failed: at most', () => {
    const { t50, t05 } = run([[120, 5, 5], [130, 5, 5]]).results;
    expect(t50).toMatchObject({ value: 120, low: null, high: 120, bound: 'at-most' });
    expect(t05).toMatchObject({ value: 120, bound: 'at-most' });
  });

  it('perfectly parted: between', () => {
    expect(run([[120, 5, 0], [130, 5, 0], [140, 5, 5], [150, 5, 5]]).results.t50).toMatchObject({ low: 130, high: 140, bound: 'between', level: null });
    // A mixed step alone between the two tells neither way.
    expect(run([[120, 5, 0], [130, 5, 2], [140, 5, 5]]).results.t50).toMatchObject({ low: 120, high: 140, bound: 'between' });
  });
});
