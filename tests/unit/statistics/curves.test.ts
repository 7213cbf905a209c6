import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveBand, fitCurve } from '../../../shared-lib/statistics/curve-fit.ts';
import type { CurveModel } from '../../../shared-lib/statistics/curve-fit.ts';
import { studentTQuantile } from '../../../shared-lib/statistics/distributions.ts';
import { fitLinear, predictLinear } from '../../../shared-lib/statistics/linear-regression.ts';
import { profileInterval } from '../../../shared-lib/statistics/profile-interval.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';

const line: CurveModel = (x, [a, b]) => a! + b! * x;
const decay: CurveModel = (x, [floor, drop, rate]) => floor! + drop! * Math.exp(-rate! * x);
// Fluorescein calibration, J. N. Miller, J. C. Miller, Statistics and Chemometrics for Analytical Chemistry, chapter 5.
const x = [0, 2, 4, 6, 8, 10, 12];
const y = [2.1, 5, 9, 12.6, 17.3, 21, 24.7];

const days = [0, 1, 2, 4, 8, 16, 32, 64];
function decaying(seed: number): number[] {
  const random = seededRandom(seed);
  return days.map((day) => decay(day, [38, 10, 0.1]) + 0.3 * random.normal());
}

describe('a straight line as a curve', () => {
  const fit = fitCurve({ model: line, x, y, start: [[0, 1]] });
  const linear = fitLinear([x], y, { intercept: true });

  it('agrees with the book’s example and with linear regression', () => {
    // Printed: slope 1.93, intercept 1.52, s(y/x) 0.4329, s(b) 0.0409, s(a) 0.2949.
    expect(fit.parameters[0]).toBeCloseTo(1.517857142857, 9);
    expect(fit.parameters[1]).toBeCloseTo(1.930357142857, 9);
    expect(fit.standardErrors[0]).toBeCloseTo(0.294936, 6);
    expect(fit.standardErrors[1]).toBeCloseTo(0.0409, 6);
    expect(fit.residualSd).toBeCloseTo(linear.residualSd!, 9);
    const band = curveBand(fit, line, 5);
    const expected = predictLinear(linear, [5]);
    for (const key of ['value', 'low', 'high', 'predictionLow', 'predictionHigh'] as const) expect(band[key]).toBeCloseTo(expected[key]!, 8);
  });

  it('its profile interval for an inverse prediction is Fieller’s', () => {
    const [a, b] = linear.coefficients as [number, number];
    const [[vaa, vab], [, vbb]] = linear.covariance as [[number, number], [number, number]];
    const t = studentTQuantile(0.975, 5);
    const target = 13.5;
    // (a + b·c − target)² = t²·var(a + b·c), a quadratic in c.
    const [p, q, r] = [b * b - t * t * vbb, 2 * (b * (a - target) - t * t * vab), (a - target) ** 2 - t * t * vaa];
    const root = Math.sqrt(q * q - 4 * p * r);
    const interval = profileInterval({ model: line, x, y }, fit, { value: (target - a) / b, condition: (c, at) => line(c, at) - target });
    expect(interval.low).toBeCloseTo((-q - root) / (2 * p), 7);
    expect(interval.high).toBeCloseTo((-q + root) / (2 * p), 7);
  });
});

describe('decay to a floor', () => {
  const problem = { model: decay, x: days, y: decaying(3), lower: [0, 0, 1e-6], upper: [100, 100, 10] };
  const fit = fitCurve({ ...problem, start: [[37, 10, 0.05], [30, 15, 0.01]] });
  const daysTo = (limit: number) => Math.log(fit.parameters[1]! / (limit - fit.parameters[0]!)) / fit.parameters[2]!;
  const interval = (limit: number) => profileInterval(problem, fit, { value: daysTo(limit), condition: (c, at) => decay(c, at) - limit }, { lowest: 0, highest: 1e5 });

  it('bounds the time to a limit well above the floor on both sides', () => {
    const { low, high } = interval(44);
    expect(low!).toBeLessThan(daysTo(44));
    expect(high!).toBeGreaterThan(daysTo(44));
    expect(high!).toBeLessThan(10);
  });

  it('leaves the time to a limit open above exactly where a floor at the limit fits as well', () => {
    const t = studentTQuantile(0.975, fit.degreesOfFreedom);
    for (const limit of [40, 38.3, 37.9]) {
      const floored = fitCurve({ ...problem, lower: [limit, 0, 1e-6], start: [[limit + 0.1, 10, 0.05]] });
      const excess = (floored.residualSumOfSquares - fit.residualSumOfSquares) / fit.residualSd! ** 2;
      expect(interval(limit).high === null, `limit ${limit}`).toBe(excess < t * t);
    }
  });

  it('keeps to its bounds and says which parameter is held there', () => {
    const held = fitCurve({ ...problem, lower: [39, 0, 1e-6], start: [[41, 10, 0.05]] });
    expect(held.parameters[0]).toBe(39);
    expect(held.standardErrors[0]).toBeNull();
    expect(held.standardErrors[1]).toBeGreaterThan(0);
    expect(held.converged).toBe(true);
    expect(held.residualSumOfSquares).toBeGreaterThan(fit.residualSumOfSquares);
  });

  it('finds an exact curve again, with no spread', () => {
    const exact = fitCurve({ ...problem, y: days.map((day) => decay(day, [38, 10, 0.1])), start: [[30, 5, 0.05]] });
    expect(exact.converged).toBe(true);
    [38, 10, 0.1].forEach((value, i) => expect(exact.parameters[i]).toBeCloseTo(value, 10));
    expect(exact.residualSd).toBeLessThan(1e-10);
  });

  it('keeps parameters finite where the best curve lies at infinity', () => {
    const stretched: CurveModel = (at, [scale, shape]) => Math.exp(-((at / scale!) ** shape!));
    const still = fitCurve({ model: stretched, x: [40, 80, 120, 160, 200], y: [1.002, 1.004, 1.006, 1.008, 1.01], start: [[20000, 1]], lower: [1e-4, 0.1], upper: [Infinity, 10] });
    expect(still.parameters.every(Number.isFinite)).toBe(true);
  });

  it('sees a parameter that comes to zero', () => {
    const power: CurveModel = (at, [a, b]) => a! * at ** b!;
    const flat = fitCurve({ model: power, x: [1, 2, 3, 4], y: [1.1, 0.9, 0.9, 1.1], start: [[1, 0]] });
    const level = fitCurve({ model: power, x: [1, 2, 3, 4], y: [1, 1, 1, 1], start: [[2, 0.5]] });
    expect(flat.standardErrors[1]).toBeGreaterThan(0.01);
    expect(level.parameters[1]).toBeCloseTo(0, 9);
    expect(level.covariance).not.toBeNull();
  });

  it('weighs: a point repeated is a point of weight two', () => {
    const doubled = fitCurve({ model: decay, x: [...days, 8], y: [...problem.y, problem.y[4]!], start: [[37, 10, 0.05]] });
    const weighted = fitCurve({ ...problem, weights: days.map((day) => (day === 8 ? 2 : 1)), start: [[37, 10, 0.05]] });
    weighted.parameters.forEach((value, i) => expect(value).toBeCloseTo(doubled.parameters[i]!, 7));
  });
});

describe('what cannot be fitted', () => {
  it('has no standard errors without degrees of freedom or for parameters that cannot be told apart', () => {
    expect(fitCurve({ model: line, x: [0, 1], y: [1, 3], start: [[0, 1]] })).toMatchObject({ degreesOfFreedom: 0, residualSd: null, covariance: null, standardErrors: [null, null] });
    const twins: CurveModel = (at, [a, b]) => (a! + b!) * at;
    expect(fitCurve({ model: twins, x, y, start: [[1, 1]] }).covariance).toBeNull();
  });

  it('is refused', () => {
    expect(() => fitCurve({ model: line, x, y: [1], start: [[0, 1]] })).toThrow(/its y/);
    expect(() => fitCurve({ model: line, x: [1], y: [1], start: [[0, 1]] })).toThrow(/at least as many points/);
    expect(() => fitCurve({ model: () => Number.NaN, x, y, start: [[0, 1]] })).toThrow(/not finite/);
    expect(() => fitCurve({ model: line, x, y, start: [] })).toThrow(/starting values/);
    expect(() => fitCurve({ model: line, x, y, start: [[0, 1]], weights: x })).toThrow(/positive/);
  });
});

describe('linear regression', () => {
  it('is unchanged by moving and stretching a predictor, but for the coefficients themselves', () => {
    fc.assert(fc.property(fc.integer({ min: -1000, max: 1000 }), fc.double({ min: 0.01, max: 100, noNaN: true }), (shift, stretch) => {
      const base = fitLinear([x], y, { intercept: true });
      const moved = fitLinear([x.map((value) => shift + stretch * value)], y, { intercept: true });
      expect(moved.coefficients[1]! * stretch).toBeCloseTo(base.coefficients[1]!, 9);
      expect(moved.residualSd).toBeCloseTo(base.residualSd!, 9);
      const [there, here] = [predictLinear(moved, [shift + stretch * 5]), predictLinear(base, [5])];
      expect(there.low).toBeCloseTo(here.low!, 7);
    }));
  });

  it('weighs: a point repeated is a point of weight two, for the coefficients', () => {
    const doubled = fitLinear([[...x, 4]], [...y, 9], { intercept: true });
    const weighted = fitLinear([x], y, { intercept: true, weights: x.map((value) => (value === 4 ? 2 : 1)) });
    weighted.coefficients.forEach((value, i) => expect(value).toBeCloseTo(doubled.coefficients[i]!, 10));
    expect(weighted.residualSumOfSquares).toBeCloseTo(doubled.residualSumOfSquares, 10);
  });

  it('refuses what has no answer', () => {
    expect(() => fitLinear([x, x.map((value) => 2 * value)], y, { intercept: true })).toThrow(/follow from one another/);
    expect(() => fitLinear([x.map(() => 3)], y, { intercept: true })).toThrow(/does not vary/);
    expect(() => fitLinear([[1]], [1], { intercept: true })).toThrow(/at least as many points/);
    expect(() => fitLinear([x], [1], { intercept: true })).toThrow(/its value of every predictor/);
    expect(() => fitLinear([], y, { intercept: false })).toThrow(/a predictor or an intercept/);
  });
});
