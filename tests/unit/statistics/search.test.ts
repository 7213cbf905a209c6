import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../shared-lib/statistics/find-root.ts';
import { minimise } from '../../../shared-lib/statistics/minimise.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import { summarise } from '../../../shared-lib/statistics/summarise.ts';
import { chiSquareUpperTail } from '../../../shared-lib/statistics/distributions.ts';

describe('root search', () => {
  it('finds cube roots to the last digits', () => {
    fc.assert(fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
      expect(findRoot((at) => at ** 3 - value, 0, value + 1) / Math.cbrt(value)).toBeCloseTo(1, 14);
    }));
  });

  it('closes in on a jump', () => {
    expect(findRoot((at) => (at < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 12);
  });

  it('refuses ends of the same sign', () => {
    expect(() => findRoot((at) => at * at + 1, -1, 1)).toThrow(/change of sign/);
  });
});

describe('minimum search', () => {
  // Test functions of J. J. Moré, B. S. Garbow, K. E. Hillstrom, ACM Trans. Math. Softw. 7 (1981) 17.
  it('Rosenbrock’s valley: minimum at (1, 1)', () => {
    const found = minimise(([a, b]) => 100 * (b! - a! * a!) ** 2 + (1 - a!) ** 2, [-1.2, 1]);
    expect(found.converged).toBe(true);
    found.point.forEach((value) => expect(Math.abs(value - 1)).toBeLessThan(1e-8));
  });

  it('Beale’s function: minimum at (3, 0.5)', () => {
    const { point } = minimise(([a, b]) => (1.5 - a! * (1 - b!)) ** 2 + (2.25 - a! * (1 - b! ** 2)) ** 2 + (2.625 - a! * (1 - b! ** 3)) ** 2, [1, 1]);
    expect(Math.abs(point[0]! - 3)).toBeLessThan(1e-8);
    expect(Math.abs(point[1]! - 0.5)).toBeLessThan(1e-8);
  });

  it('a bowl that does not come down to zero, where values alone tell only half the digits', () => {
    const { point } = minimise(([a, b, c]) => 5 + Math.cosh(a! - 2) + (b! + 1) ** 2 + (c! - b!) ** 2, [0, 0, 0]);
    [2, -1, -1].forEach((value, i) => expect(Math.abs(point[i]! - value)).toBeLessThan(1e-8));
  });

  it('keeps off ground where the function has no value', () => {
    const { point } = minimise(([a]) => a! - Math.log(a!), [5]);
    expect(point[0]).toBeCloseTo(1, 8);
    expect(() => minimise(() => Number.NaN, [1])).toThrow(/not finite/);
  });

  it('says when its evaluations ran out', () => {
    expect(minimise(([a, b]) => 100 * (b! - a! * a!) ** 2 + (1 - a!) ** 2, [-1.2, 1], { maxEvaluations: 30 }).converged).toBe(false);
  });
});

describe('random numbers from a seed', () => {
  it('repeat, and differ between seeds', () => {
    const draw = (seed: number) => {
      const random = seededRandom(seed);
      return [random.uniform(), random.normal(), random.uniform()];
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('are uniform: chi-square over 100 cells', () => {
    const random = seededRandom(2024);
    const counts = new Array<number>(100).fill(0);
    const draws = 200_000;
    for (let i = 0; i < draws; i++) counts[Math.floor(random.uniform() * 100)]!++;
    const expected = draws / 100;
    const statistic = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    expect(chiSquareUpperTail(statistic, 99)).toBeGreaterThan(0.001);
    expect(chiSquareUpperTail(statistic, 99)).toBeLessThan(0.999);
  });

  it('are normal: mean, spread, skewness and kurtosis within four standard errors', () => {
    const random = seededRandom(99);
    const draws = Array.from({ length: 200_000 }, () => random.normal());
    const { mean, standardDeviation: sd } = summarise(draws);
    const moment = (power: number) => draws.reduce((sum, value) => sum + ((value - mean) / sd!) ** power, 0) / draws.length;
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(draws.length));
    expect(Math.abs(sd! - 1)).toBeLessThan(4 / Math.sqrt(2 * draws.length));
    expect(Math.abs(moment(3))).toBeLessThan(4 * Math.sqrt(6 / draws.length));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(4 * Math.sqrt(24 / draws.length));
  });
});
