import { describe, expect, it } from 'vitest';
import { adjustP } from '../../../shared-lib/statistics/adjust-p.ts';
import { kruskalWallis } from '../../../shared-lib/statistics/kruskal-wallis.ts';
import { mannWhitney } from '../../../shared-lib/statistics/mann-whitney.ts';
import anova from './analysis-of-variance.json';
import { lre, worstLre } from './lre.ts';
import reference from './rank-tests.json';

describe('rank tests against R 4.2.2', () => {
  it('Kruskal–Wallis: Hollander and Wolfe’s example and plant growth (chi-square p)', () => {
    const { x, y, z, H, df, p } = reference.kruskal_hollander_wolfe;
    const small = kruskalWallis([x, y, z])!;
    expect(lre(small.statistic, H)).toBeGreaterThan(10);
    expect(small.degreesOfFreedom).toBe(df);
    expect(lre(small.pChiSquare, p)).toBeGreaterThan(10);
    const { ctrl, trt1, trt2, kw, kw_p } = anova.oneway.plantgrowth;
    const growth = kruskalWallis([ctrl, trt1, trt2])!;
    expect(lre(growth.statistic, kw)).toBeGreaterThan(10);
    expect(lre(growth.pChiSquare, kw_p)).toBeGreaterThan(10);
  });

  it('Kruskal–Wallis, exact: the largest H of groups of 2, 2 and 2 has p = 6/90 (tables: H 4.571, P 0.0667)', () => {
    const { statistic, p, method } = kruskalWallis([[1, 2], [3, 4], [5, 6]])!;
    expect(statistic).toBeCloseTo(4.571, 3);
    expect(p).toBeCloseTo(6 / 90, 12);
    expect(method).toBe('exact');
  });

  it('Kruskal–Wallis, exact: groups of 3, 3 and 3 reach H 7.2 with P 0.0036 (Kruskal and Wallis, table)', () => {
    const { statistic, p } = kruskalWallis([[1, 2, 3], [4, 5, 6], [7, 8, 9]])!;
    expect(statistic).toBeCloseTo(7.2, 10);
    expect(p).toBeCloseTo(6 / 1680, 12);
  });

  it('Mann–Whitney, exact, with the Hodges–Lehmann shift and its interval', () => {
    const { x, y, W, p_two, hl, ci } = reference.mannwhitney_exact;
    const found = mannWhitney(x, y);
    expect(found.statistic).toBe(W);
    expect(lre(found.p, p_two)).toBeGreaterThan(10);
    expect(found.shift).toBeCloseTo(hl, 10);
    expect(found.low).toBeCloseTo(ci[0]!, 10);
    expect(found.high).toBeCloseTo(ci[1]!, 10);
  });

  it('Mann–Whitney, exact with ties (permutation of midranks)', () => {
    const { x, y, W, p_exact } = reference.mannwhitney_exact_ties;
    const found = mannWhitney(x, y);
    expect(found.statistic).toBe(W);
    expect(lre(found.p, p_exact)).toBeGreaterThan(10);
  });

  it('adjusted p values', () => {
    const { p, holm, bonferroni, hochberg, bh } = reference.p_adjust;
    expect(worstLre(adjustP(p, 'holm'), holm)).toBeGreaterThan(13);
    expect(worstLre(adjustP(p, 'bonferroni'), bonferroni)).toBeGreaterThan(13);
    expect(worstLre(adjustP(p, 'hochberg'), hochberg)).toBeGreaterThan(13);
    expect(worstLre(adjustP(p, 'benjamini-hochberg'), bh)).toBeGreaterThan(13);
  });
});
