import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjustP } from '../../../shared-lib/statistics/adjust-p.ts';
import { chiSquareUpperTail, studentTQuantile, studentTUpperTail } from '../../../shared-lib/statistics/distributions.ts';
import { dunnett, dunnettUnequalSpread } from '../../../shared-lib/statistics/dunnett.ts';
import { gamesHowell } from '../../../shared-lib/statistics/games-howell.ts';
import { kruskalWallis } from '../../../shared-lib/statistics/kruskal-wallis.ts';
import { logRankTest } from '../../../shared-lib/statistics/log-rank.ts';
import { mannWhitney } from '../../../shared-lib/statistics/mann-whitney.ts';
import { meanDifference } from '../../../shared-lib/statistics/mean-difference.ts';
import { meanSquareInterval } from '../../../shared-lib/statistics/mean-square-interval.ts';
import { chiSquareQuantile } from '../../../shared-lib/statistics/distributions.ts';
import { oneWayAnova } from '../../../shared-lib/statistics/one-way-anova.ts';
import type { PairComparison } from '../../../shared-lib/statistics/pair-comparison.ts';
import { choiceSumDistribution, signSumDistribution } from '../../../shared-lib/statistics/rank-sum-distribution.ts';
import { studentizedRange } from '../../../shared-lib/statistics/studentized-range.ts';
import { tamhane } from '../../../shared-lib/statistics/tamhane.ts';
import { tukeyKramer } from '../../../shared-lib/statistics/tukey-kramer.ts';
import { welchAnova } from '../../../shared-lib/statistics/welch-anova.ts';
import { welchSimulated } from '../../../shared-lib/statistics/welch-simulated.ts';

const reading = fc.integer({ min: -500, max: 500 }).map((value) => value / 100);
const groups = fc.array(fc.array(reading, { minLength: 2, maxLength: 6 }), { minLength: 2, maxLength: 4 });

type Procedure = (groups: number[][], level?: number) => PairComparison[];
const procedures: [string, Procedure][] = [
  ['Tukey–Kramer', tukeyKramer],
  ['Games–Howell', gamesHowell],
  ['Tamhane', tamhane],
  ['Welch, simulated', welchSimulated],
  ['Dunnett', (given, level) => dunnett(given, 0, level)],
  ['Dunnett, separate spreads', (given, level) => dunnettUnequalSpread(given, 0, level)],
];

describe('simulated comparison by separate spreads', () => {
  const wide = (n: number, mean: number, sd: number) => Array.from({ length: n }, (_, i) => mean + sd * Math.sin(12.9898 * (i + 1)) * 1.4);

  it('is Welch’s t of two groups, to what 20 000 draws can tell', () => {
    const [a, b] = [wide(5, 3, 0.4), wide(7, 2.4, 0.2)];
    const { standardError, degreesOfFreedom } = meanDifference(a, b, 'welch')!;
    const [pair] = welchSimulated([a, b]);
    // Four standard errors of a share of 5 % in 20 000 draws are 0.6 %, which moves this t by about 0.06 of its 2.5.
    expect((pair!.high! - pair!.low!) / 2 / standardError / studentTQuantile(0.975, degreesOfFreedom)).toBeCloseTo(1, 1);
    const p = 2 * studentTUpperTail(Math.abs(pair!.difference) / standardError, degreesOfFreedom);
    expect(Math.abs(pair!.p! - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / 20_000) + 1e-4);
  });

  it('runs into Games and Howell’s comparison where readings are many', () => {
    const many = [wide(150, 3, 0.4), wide(150, 3.05, 0.4), wide(150, 3.1, 0.4), wide(150, 3, 0.4)];
    const exact = gamesHowell(many);
    welchSimulated(many).forEach(({ p }, i) => expect(Math.abs(p! - exact[i]!.p!)).toBeLessThan(0.02));
  });
});

describe.each(procedures)('%s', (_, compare) => {
  it('p falls below 5 % exactly when the 95 % interval leaves out zero', () => {
    fc.assert(fc.property(groups, (given) => {
      for (const { difference, low, high, p } of compare(given)) {
        if (p === null) {
          expect([low, high]).toEqual([null, null]);
          continue;
        }
        expect(p).toBeGreaterThanOrEqual(0);
        expect(p).toBeLessThanOrEqual(1);
        expect((low! + high!) / 2).toBeCloseTo(difference, 8);
        if (Math.abs(p - 0.05) > 1e-6) expect(low! > 0 || high! < 0).toBe(p < 0.05);
      }
    }), { numRuns: 25 });
  });

  it('does not care where zero lies or in what unit', () => {
    fc.assert(fc.property(groups, (given) => {
      const before = compare(given);
      const after = compare(given.map((values) => values.map((value) => 1000 + 3 * value)));
      before.forEach((pair, i) => {
        if (pair.p === null || pair.p < 1e-9) return;
        expect(after[i]!.difference).toBeCloseTo(3 * pair.difference, 6);
        expect(after[i]!.p! / pair.p).toBeCloseTo(1, 5);
      });
    }), { numRuns: 15 });
  });

  it('refuses what is no comparison', () => {
    expect(() => compare([[1, 2]])).toThrow(RangeError);
    expect(() => compare([[1, 2], []])).toThrow(RangeError);
    expect(() => compare([[1, 2], [Number.NaN, 1]])).toThrow(RangeError);
  });
});

describe('two groups', () => {
  const [a, b] = [[3.1, 3.4, 2.9, 3.3, 3.0], [3.6, 3.2, 3.9, 3.5]];

  it('F is t², Welch’s F is Welch’s t², and the comparisons of pairs are the t tests', () => {
    const pooled = meanDifference(a, b, 'pooled')!;
    const anova = oneWayAnova([a, b])!;
    expect(anova.f).toBeCloseTo((pooled.difference / pooled.standardError) ** 2, 9);
    expect(tukeyKramer([a, b])[0]!.p).toBeCloseTo(anova.p!, 10);
    expect(dunnett([b, a], 0)[0]!.p).toBeCloseTo(anova.p!, 10);
    const welch = meanDifference(a, b, 'welch')!;
    const separate = welchAnova([a, b])!;
    expect(separate.f).toBeCloseTo((welch.difference / welch.standardError) ** 2, 9);
    expect(separate.denominatorDf).toBeCloseTo(welch.degreesOfFreedom, 9);
    for (const compare of [gamesHowell, tamhane]) expect(compare([a, b])[0]!.p).toBeCloseTo(separate.p, 10);
    expect(dunnettUnequalSpread([b, a], 0)[0]!.p).toBeCloseTo(separate.p, 10);
  });

  it('without spread there is nothing to judge by', () => {
    expect(oneWayAnova([[1, 1], [2, 2]])).toMatchObject({ f: null, p: null });
    expect(oneWayAnova([[1], [2]])).toBeNull();
    expect(welchAnova([[1, 1], [2, 3]])).toBeNull();
    expect(meanDifference([1, 1], [2, 2], 'welch')).toBeNull();
    expect(tukeyKramer([[0.1, 0.1, 0.1], [0.2, 0.2]])[0]).toMatchObject({ p: null, low: null, high: null });
  });
});

describe('rank distributions', () => {
  it('sums of chosen weights are those counted one by one', () => {
    const weights = [2, 3, 3, 7, 8];
    const counted = new Map<number, number>();
    for (let i = 0; i < 5; i++) for (let j = i + 1; j < 5; j++) counted.set(weights[i]! + weights[j]!, (counted.get(weights[i]! + weights[j]!) ?? 0) + 0.1);
    const found = choiceSumDistribution(weights, 2);
    found.forEach((p, sum) => expect(p).toBeCloseTo(counted.get(sum) ?? 0, 12));
  });

  it('signed sums of 1, 2 and 3 are 1, 1, 1, 2, 1, 1, 1 in eight', () => {
    expect([...signSumDistribution([1, 2, 3])].map((p) => p * 8)).toEqual([1, 1, 1, 2, 1, 1, 1]);
  });

  it('the exact rank test of more readings runs into its normal approximation', () => {
    const x = Array.from({ length: 40 }, (_, i) => (i * 37) % 101);
    const y = Array.from({ length: 40 }, (_, i) => ((i * 53) % 97) + 12);
    const exact = mannWhitney(x, y);
    const approximate = mannWhitney([...x, 50], y);
    expect(exact.exact).toBe(true);
    expect(approximate.exact).toBe(false);
    expect(Math.abs(approximate.p - exact.p)).toBeLessThan(0.03);
  });

  it('too few readings have no interval at the level', () => {
    expect(mannWhitney([1, 2, 3], [4, 5, 6])).toMatchObject({ low: null, high: null, p: 0.1 });
  });

  it('Kruskal–Wallis of two groups has the exact p of Mann–Whitney, and of equal readings says nothing', () => {
    const [x, y] = [[1, 4, 6, 9], [2, 7, 8, 12, 15]];
    expect(kruskalWallis([x, y])!.p).toBeCloseTo(mannWhitney(x, y).p, 12);
    expect(kruskalWallis([[2, 2], [2, 2]])).toBeNull();
  });

  it('sampled rearrangements repeat and come near chi-square', () => {
    const given = [0, 1, 2].map((shift) => Array.from({ length: 10 }, (_, i) => ((i * 7) % 10) + shift / 2));
    const found = kruskalWallis(given)!;
    expect(found.method).toBe('sampled');
    expect(kruskalWallis(given)!.p).toBe(found.p);
    expect(Math.abs(found.p - chiSquareUpperTail(found.statistic, 2))).toBeLessThan(0.02);
  });
});

describe('further properties', () => {
  it('adjusted p values are never below the raw ones and keep their order', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 }), fc.constantFrom('holm', 'hochberg', 'bonferroni', 'benjamini-hochberg' as const), (ps, method) => {
      const adjusted = adjustP(ps, method);
      ps.forEach((p, i) => {
        expect(adjusted[i]!).toBeGreaterThanOrEqual(p);
        ps.forEach((q, j) => {
          if (p < q) expect(adjusted[i]!).toBeLessThanOrEqual(adjusted[j]!);
        });
      });
    }));
    expect(() => adjustP([1.2], 'holm')).toThrow(RangeError);
  });

  it('many quantiles interpolated are those computed one by one, to 1e-7', () => {
    const range = studentizedRange(6);
    const dfs = Array.from({ length: 40 }, (_, i) => 1 + i * 1.7 + i * i * 0.3);
    range.upperQuantiles(0.05, dfs).forEach((q, i) => expect(Math.abs(q / range.upperQuantile(0.05, dfs[i]!) - 1)).toBeLessThan(1e-7));
  });

  it('the interval of one mean square is that of chi-square', () => {
    const { value, low, high } = meanSquareInterval([{ coefficient: 2, meanSquare: 3, degreesOfFreedom: 12 }], 0.95);
    expect(value).toBe(6);
    expect(low).toBeCloseTo((6 * 12) / chiSquareQuantile(0.975, 12), 10);
    expect(high).toBeCloseTo((6 * 12) / chiSquareQuantile(0.025, 12), 10);
  });

  it('log-rank of groups that never have the event says nothing', () => {
    expect(logRankTest([[{ time: 1, event: false }], [{ time: 2, event: false }]])).toBeNull();
    expect(() => logRankTest([[{ time: 1, event: true }]])).toThrow(RangeError);
  });
});
