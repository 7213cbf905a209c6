import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aiccOfLeastSquares, aiccOfLikelihood } from '../../../shared-lib/statistics/akaike.ts';
import { clopperPearson } from '../../../shared-lib/statistics/clopper-pearson.ts';
import { grubbsTest } from '../../../shared-lib/statistics/grubbs.ts';
import { kaplanMeier } from '../../../shared-lib/statistics/kaplan-meier.ts';
import { shapiroWilk } from '../../../shared-lib/statistics/shapiro-wilk.ts';
import { summarise } from '../../../shared-lib/statistics/summarise.ts';

describe('summary', () => {
  it('gives the interval of the NIST/SEMATECH e-Handbook heat-flow example (1.3.5.2, figures from memory: n 195, mean 9.261460, s 0.022789, 95 % limits 9.258242 and 9.264679)', () => {
    // A sample with that mean and standard deviation: the interval depends on nothing else.
    const step = 0.022789;
    const values = [9.26146, ...Array.from({ length: 194 }, (_, i) => 9.26146 + (i % 2 ? step : -step))];
    const { low, high, standardDeviation } = summarise(values);
    expect(standardDeviation).toBeCloseTo(0.022789, 9);
    expect(low).toBeCloseTo(9.258242, 5);
    expect(high).toBeCloseTo(9.264679, 5);
  });

  it('moves and stretches with the readings', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 40 }), fc.integer({ min: -1e6, max: 1e6 }), (values, shift) => {
      const [here, there] = [summarise(values), summarise(values.map((value) => 3 * value + shift))];
      for (const key of ['mean', 'median', 'minimum', 'maximum', 'low', 'high'] as const) {
        expect(Math.abs(there[key]! - (3 * here[key]! + shift))).toBeLessThan(1e-8 * (1 + Math.abs(shift)));
      }
      expect(there.standardDeviation).toBeCloseTo(3 * here.standardDeviation!, 7);
    }));
  });

  it('has the middle of an even sample, and one reading without spread', () => {
    expect(summarise([4, 1, 3, 2]).median).toBe(2.5);
    expect(summarise([-1e308, 1e308]).median).toBe(0);
    expect(summarise([38])).toEqual({ n: 1, mean: 38, standardDeviation: null, standardError: null, low: null, high: null, median: 38, minimum: 38, maximum: 38 });
  });

  it('refuses nothing at all and what is not a number', () => {
    expect(() => summarise([])).toThrow(/at least one/);
    expect(() => summarise([1, Number.NaN])).toThrow(/finite/);
  });
});

describe('Akaike’s criterion', () => {
  it('is the textbook formula: n ln(RSS/n) + 2k + 2k(k + 1)/(n − k − 1), the variance counted in k', () => {
    // K. P. Burnham, D. R. Anderson, Model Selection and Multimodel Inference (2002), 2.4.
    const k = 3;
    expect(aiccOfLeastSquares(5, 10, 2)).toBeCloseTo(10 * Math.log(0.5) + 2 * k + (2 * k * (k + 1)) / (10 - k - 1), 12);
    expect(aiccOfLikelihood(-12.5, 10, k)).toBeCloseTo(25 + 2 * k + (2 * k * (k + 1)) / (10 - k - 1), 12);
  });

  it('is null rather than infinite', () => {
    expect(aiccOfLeastSquares(5, 4, 2)).toBeNull();
    expect(aiccOfLeastSquares(0, 10, 2)).toBeNull();
    expect(aiccOfLikelihood(-1, 4, 3)).toBeNull();
  });
});

describe('exact interval of a share', () => {
  it('mirrors, holds the share, and is refused for what is no count', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 60 }), fc.nat(60), (trials, some) => {
      const successes = Math.min(some, trials);
      const [here, there] = [clopperPearson(successes, trials), clopperPearson(trials - successes, trials)];
      expect(here.low).toBeLessThanOrEqual(successes / trials);
      expect(here.high).toBeGreaterThanOrEqual(successes / trials);
      expect(here.low).toBeCloseTo(1 - there.high, 10);
    }));
    expect(() => clopperPearson(3, 2)).toThrow(/3 of 2/);
    expect(() => clopperPearson(1.5, 2)).toThrow(/whole/);
  });
});

describe('outliers and normality', () => {
  it('say nothing about two readings or readings without spread', () => {
    for (const values of [[1, 2], [3, 3, 3, 3]]) {
      expect(grubbsTest(values)).toBeNull();
      expect(shapiroWilk(values)).toBeNull();
    }
  });

  it('Grubbs’ p value and critical value agree', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 3, maxLength: 20 }), (values) => {
      const test = grubbsTest(values);
      if (test && Math.abs(test.statistic - test.critical) > 1e-9) expect(test.outlying).toBe(test.p < 0.05);
    }));
  });

  it('W does not change with origin, scale or sign', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 3, maxLength: 50 }), (values) => {
      const [here, there] = [shapiroWilk(values), shapiroWilk(values.map((value) => 7 - 2 * value))];
      if (here === null) expect(there).toBeNull();
      else expect(there!.w).toBeCloseTo(here.w, 10);
    }));
  });
});

describe('share that lasts', () => {
  it('without bounds is the share of longer times', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 40 }), (times) => {
      for (const { time, survival } of kaplanMeier(times, times.map(() => true)).rows) {
        expect(survival).toBeCloseTo(times.filter((one) => one > time).length / times.length, 12);
      }
    }));
  });

  it('has its median in the middle of a stretch at one half', () => {
    expect(kaplanMeier([1, 2, 3, 4], [true, true, true, true]).median.value).toBe(2.5);
    expect(kaplanMeier([1, 2, 3], [true, false, false]).median).toEqual({ value: null, low: expect.any(Number), high: null });
  });

  it('has no interval where it has no variance', () => {
    const { rows } = kaplanMeier([1, 2, 3], [false, true, true]);
    expect(rows.map(({ low }) => low === null)).toEqual([true, false, true]);
  });

  it('refuses times without marks', () => {
    expect(() => kaplanMeier([1, 2], [true])).toThrow(/event mark/);
    expect(() => kaplanMeier([Number.NaN], [true])).toThrow(/finite/);
  });
});
