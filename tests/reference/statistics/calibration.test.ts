import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { calibrationCalculation } from '../../../shared-lib/statistics/calibration.calculation.ts';
import { predictLinear, fitLinear } from '../../../shared-lib/statistics/linear-regression.ts';
import reference from './calibration.json';
import cars from './cars.json';
import { lre, worstLre } from './lre.ts';

describe('calibration of a fluorescence reading (Miller and Miller; R 4.2.2)', () => {
  const unknown = reference.inverse.map(({ y0, m }) => Array<number>(m).fill(y0));
  const { results, table } = runCalculation(calibrationCalculation, { x: reference.x, y: reference.y, unknown });

  it('line', () => {
    const { coef, s, r2, ci95 } = reference;
    expect(worstLre([results.intercept!.value, results.slope!.value], coef)).toBeGreaterThan(9);
    expect(worstLre([results.intercept!.low, results.intercept!.high, results.slope!.low, results.slope!.high], ci95)).toBeGreaterThan(9);
    expect(lre(results.residualSd!.value, s)).toBeGreaterThan(9);
    expect(lre(results.rSquared!.value, r2)).toBeGreaterThan(9);
  });

  it.each(reference.inverse.map((row, index) => ({ ...row, index })))('unknown y $y0, $m readings: Fieller and delta', ({ x0, s_x0, ci95_delta, ci95_fieller, index }) => {
    const row = table[index]!;
    expect(lre(row.x as number, x0)).toBeGreaterThan(9);
    expect(lre(row.standardError as number, s_x0)).toBeGreaterThan(9);
    expect(worstLre([row.deltaLow, row.deltaHigh] as number[], ci95_delta)).toBeGreaterThan(9);
    expect(worstLre([row.low, row.high] as number[], ci95_fieller)).toBeGreaterThan(9);
  });

  it('agrees with what the book prints (limits ±0.68, ±0.62, ±0.68)', () => {
    reference.printed.limits95.forEach((limit, index) => {
      const { deltaLow, deltaHigh } = table[index] as { deltaLow: number; deltaHigh: number };
      expect((deltaHigh - deltaLow) / 2).toBeCloseTo(limit, 2);
    });
  });

  it('with equal weights for all points a weighted line is the plain one, read back at unit weight', () => {
    const fit = fitLinear([cars.speed], cars.dist, { intercept: true, weights: cars.speed.map(() => 2) });
    const [value, low, high] = cars.ci.slice(0, 3);
    const at = predictLinear(fit, [10]);
    expect(worstLre([at.value, at.low, at.high], [value!, low!, high!])).toBeGreaterThan(9);
  });
});
