import { describe, expect, it } from 'vitest';
import { desirability, overallDesirability } from '../../../shared-lib/statistics/desirability.ts';
import type { Desire } from '../../../shared-lib/statistics/desirability.ts';
import { fitLinear } from '../../../shared-lib/statistics/linear-regression.ts';
import { minimise } from '../../../shared-lib/statistics/minimise.ts';
import reference from './desirability.json';
import { worstLre } from './lre.ts';

const desires: Desire[] = reference.spec.map(({ goal, low, target, high }) => ({ goal: goal === 'max' ? ('higher' as const) : ('target' as const), low, target, ...(high !== undefined && { high }) }));

/** The full quadratic in three factors, in the order of the source. */
function quadratic([a, b, c]: readonly number[]): number[] {
  return [a!, b!, c!, a! * a!, b! * b!, c! * c!, a! * b!, a! * c!, b! * c!];
}

const rows = reference.rows.map((row) => quadratic(row.slice(0, 3)));
const fits = [3, 4, 5, 6].map((column) => fitLinear(rows[0]!.map((_, j) => rows.map((row) => row[j]!)), reference.rows.map((row) => row[column]!), { intercept: true }));
const predicted = (x: readonly number[]) => fits.map(({ coefficients }) => [1, ...quadratic(x)].reduce((sum, value, k) => sum + value * coefficients[k]!, 0));

describe('Derringer and Suich’s tyre tread (1980; data from memory, confirmed by the fit)', () => {
  it('the fitted quadratics are those published', () => {
    fits.forEach(({ coefficients, residualSd }, i) => {
      expect(worstLre(coefficients, reference.coef[i]!)).toBeGreaterThan(9);
      expect(residualSd).toBeCloseTo(reference.resid_sd[i]!, 8);
    });
  });

  it.each(reference.evaluations)('desirability at $x', ({ x, d, D }) => {
    const values = predicted(x);
    values.forEach((value, i) => expect(desirability(value, desires[i]!)).toBeCloseTo(d[i]!, 9));
    expect(overallDesirability(values, desires)).toBeCloseTo(D, 9);
  });

  it('the best compromise lies where it was published, D 0.583', () => {
    const { point, value } = minimise((x) => -overallDesirability(predicted(x), desires), [-0.1, 0.2, -0.8]);
    expect(Math.abs(-value - reference.best_found.D)).toBeLessThan(1e-5);
    expect(-value).toBeCloseTo(reference.published.D, 3);
    point.forEach((coordinate, i) => expect(Math.abs(coordinate - reference.published.x[i]!)).toBeLessThan(0.01));
  });
});
