import { describe, expect, it } from 'vitest';
import { studentTQuantile } from '../../../shared-lib/statistics/distributions.ts';
import { dunnett } from '../../../shared-lib/statistics/dunnett.ts';
import { dunnettDistribution } from '../../../shared-lib/statistics/dunnett-distribution.ts';
import { gamesHowell } from '../../../shared-lib/statistics/games-howell.ts';
import type { PairComparison } from '../../../shared-lib/statistics/pair-comparison.ts';
import { studentizedRange } from '../../../shared-lib/statistics/studentized-range.ts';
import { tukeyKramer } from '../../../shared-lib/statistics/tukey-kramer.ts';
import anova from './analysis-of-variance.json';
import control from './dunnett.json';
import { lre, worstLre } from './lre.ts';
import pairs from './pairs.json';
import range from './studentized-range.json';

/** A row `i, j, …` of the examples, one-based; the pair the other way round has the signs turned. */
function pairOf(found: PairComparison[], i: number, j: number): { difference: number; low: number; high: number; p: number } {
  const straight = found.find(({ a, b }) => a === i - 1 && b === j - 1);
  if (straight) return { difference: straight.difference, low: straight.low!, high: straight.high!, p: straight.p! };
  const turned = found.find(({ a, b }) => a === j - 1 && b === i - 1)!;
  return { difference: -turned.difference, low: -turned.high!, high: -turned.low!, p: turned.p! };
}

describe('the studentized range', () => {
  it.each(['alpha_0.05_by_df', 'alpha_0.01_by_df'] as const)('%s: quantiles to the ten decimals given', (table) => {
    const p = table === 'alpha_0.05_by_df' ? 0.05 : 0.01;
    for (const [at, k] of range.quantiles.k.entries()) {
      const distribution = studentizedRange(k);
      for (const [df, row] of Object.entries(range.quantiles[table])) {
        expect(Math.abs(distribution.upperQuantile(p, Number(df)) - row[at]!), `k ${k}, df ${df}`).toBeLessThan(2e-10);
      }
    }
  });

  it('tails against mpmath (1e-11), where the complement of the lower tail still has the digits', () => {
    const rows = range.tails.rows.filter(({ cdf }) => 1 - cdf > 1e-4);
    expect(rows.length).toBeGreaterThan(40);
    for (const { q, k, df, cdf } of rows) expect(lre(studentizedRange(k).upperTail(q, df), 1 - cdf), `${q} ${k} ${df}`).toBeGreaterThan(11);
  });

  it('for two means is √2·|t|, far out as well', () => {
    for (const df of [1, 2, 5, 30, 1e4, Infinity]) {
      for (const p of [0.5, 0.05, 1e-4, 1e-10]) {
        expect(lre(studentizedRange(2).upperTail(-studentTQuantile(p / 2, df) * Math.SQRT2, df), p), `df ${df}, p ${p}`).toBeGreaterThan(11);
      }
    }
  });
});

describe('Dunnett’s distribution', () => {
  it('quantiles of one treatment up to nine, equal counts (8 decimals given)', () => {
    const { k, 'two_sided_0.05_by_df': table } = control.quantiles;
    for (const [at, treatments] of k.entries()) {
      const distribution = dunnettDistribution(Array<number>(treatments).fill(Math.SQRT1_2));
      for (const [df, row] of Object.entries(table)) {
        expect(Math.abs(distribution.upperQuantile(0.05, Number(df)) - row[at]!), `k ${treatments}, df ${df}`).toBeLessThan(1e-8);
      }
    }
  });

  it('for one treatment is |t|, whatever the counts', () => {
    for (const share of [0, 0.3, 0.9, 0.999]) {
      for (const p of [0.5, 0.01, 1e-8]) {
        expect(lre(dunnettDistribution([share]).upperTail(-studentTQuantile(p / 2, 7), 7), p)).toBeGreaterThan(11);
      }
    }
  });

  it('matches the printed value 2.76 for three treatments and 10 degrees of freedom (Dunnett 1964)', () => {
    expect(dunnettDistribution([Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2]).upperQuantile(0.05, 10)).toBeCloseTo(2.76, 2);
  });

  it.each(['balanced', 'dunnett1955_unbalanced', 'multcompare_doc'] as const)('example %s against the exact quadrature (values quoted from R carry 2e-4)', (name) => {
    const { samples, control: base, exact } = control.examples[name];
    const found = dunnett([base, ...samples], 0);
    expect(worstLre(found.map(({ difference }) => difference), exact.diff)).toBeGreaterThan(9);
    expect(worstLre(found.map(({ p }) => p), exact.p_two_sided)).toBeGreaterThan(6);
    expect(worstLre(found.map(({ low }) => low), exact.ci95_two_sided.map(([low]) => low!))).toBeGreaterThan(8);
    expect(worstLre(found.map(({ high }) => high), exact.ci95_two_sided.map(([, high]) => high!))).toBeGreaterThan(8);
  });
});

describe('Tukey’s comparison of all pairs', () => {
  // The packages quoted carry quantiles good to 7 or 8 digits; ours agree with the 10 decimals of the table above.
  it.each([
    ['same_size', 1e-7],
    ['diff_size', 1e-7],
  ] as const)('%s (multcompare, quoted in an open test suite)', (name, tolerance) => {
    const { data, rows_i_j_low_diff_high_p: rows } = pairs.tukey[name];
    const found = tukeyKramer(data);
    for (const [i, j, low, difference, high, p] of rows as [number, number, number, number, number, number][]) {
      const pair = pairOf(found, i, j);
      expect(Math.abs(pair.low - low)).toBeLessThan(tolerance);
      expect(Math.abs(pair.difference - difference)).toBeLessThan(tolerance);
      expect(Math.abs(pair.high - high)).toBeLessThan(tolerance);
      expect(Math.abs(pair.p - p)).toBeLessThan(tolerance);
    }
  });

  // The printed limits are up to 1.2e-7 off: their half-widths all come to q(0.95; 3, 15) = 3.67337778 where Gauss–Legendre
  // quadrature of the double integral (400 × 400 nodes) and SciPy 1.17's `studentized_range.ppf` both give 3.673377659.
  it('the quantile behind the very unequal counts is ours, not that of the printed limits', () => {
    expect(studentizedRange(3).upperQuantile(0.05, 15)).toBeCloseTo(3.673377658897, 11);
  });

  it('very unequal counts (SAS, printed digits)', () => {
    const { data, rows_i_j_low_diff_high: rows } = pairs.tukey.extreme_size;
    const found = tukeyKramer(data);
    for (const [i, j, low, difference, high] of rows as [number, number, number, number, number][]) {
      const pair = pairOf(found, i, j);
      expect([pair.low, pair.difference, pair.high].map((value, at) => Math.abs(value - [low, difference, high][at]!) < 2e-7)).toEqual([true, true, true]);
    }
  });

  it('e-Handbook 7.4.7.1 (two decimals)', () => {
    const { data, rows_i_j_low_high: rows } = pairs.tukey.nist_handbook_prc471;
    const found = tukeyKramer(data);
    for (const [i, j, low, high] of rows as [number, number, number, number][]) {
      const pair = pairOf(found, i, j);
      expect(Math.abs(pair.low - low), `${i} ${j}`).toBeLessThan(0.011);
      expect(Math.abs(pair.high - high), `${i} ${j}`).toBeLessThan(0.011);
    }
  });

  it('plant growth against R (TukeyHSD)', () => {
    const { ctrl, trt1, trt2, tukey } = anova.oneway.plantgrowth;
    const found = tukeyKramer([ctrl, trt1, trt2]);
    [[2, 1], [3, 1], [3, 2]].forEach(([i, j], row) => {
      const [difference, low, high, p] = tukey.slice(4 * row, 4 * row + 4);
      const pair = pairOf(found, i!, j!);
      expect(worstLre([pair.difference, pair.low, pair.high, pair.p], [difference!, low!, high!, p!])).toBeGreaterThan(6);
    });
  });
});

describe('Games and Howell’s comparison', () => {
  it.each(['same_size', 'diff_size'] as const)('%s (SPSS, quoted in an open test suite)', (name) => {
    const { data, rows_i_j_diff_low_high_p: rows } = pairs.games_howell[name];
    const found = gamesHowell(data);
    for (const [i, j, difference, low, high, p] of rows as [number, number, number, number, number, number][]) {
      const pair = pairOf(found, i, j);
      expect(Math.abs(pair.difference - difference)).toBeLessThan(1e-8);
      expect(Math.abs(pair.low - low)).toBeLessThan(1e-5);
      expect(Math.abs(pair.high - high)).toBeLessThan(1e-5);
      expect(Math.abs(pair.p - p)).toBeLessThan(1e-7);
    }
  });
});
