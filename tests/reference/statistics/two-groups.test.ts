import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { censoredDifference } from '../../../shared-lib/statistics/censored-difference.ts';
import { censoredMean } from '../../../shared-lib/statistics/censored-mean.ts';
import { studentTQuantile, studentTUpperTail } from '../../../shared-lib/statistics/distributions.ts';
import { equivalenceCalculation } from '../../../shared-lib/statistics/equivalence.calculation.ts';
import { hedgesG } from '../../../shared-lib/statistics/hedges-g.ts';
import { logRankTest } from '../../../shared-lib/statistics/log-rank.ts';
import { meanDifference } from '../../../shared-lib/statistics/mean-difference.ts';
import survival from './kaplan-meier.json';
import { lre, worstLre } from './lre.ts';
import reference from './t-tests.json';

const { g1, g2, ...expected } = reference.sleep;

describe('t tests of sleep data against R 4.2.2', () => {
  it.each(['welch', 'pooled', 'paired'] as const)('%s', (design) => {
    const { difference, standardError, degreesOfFreedom } = meanDifference(g1, g2, design)!;
    const { t, df, p, ci, se } = expected[design];
    expect(lre(difference / standardError, t)).toBeGreaterThan(10);
    expect(lre(standardError, se)).toBeGreaterThan(10);
    expect(lre(degreesOfFreedom, df)).toBeGreaterThan(10);
    expect(lre(2 * studentTUpperTail(Math.abs(difference) / standardError, degreesOfFreedom), p)).toBeGreaterThan(10);
    const reach = studentTQuantile(0.975, degreesOfFreedom) * standardError;
    expect(worstLre([difference - reach, difference + reach], ci)).toBeGreaterThan(10);
  });

  it('the difference of bounded readings is Welch’s where every reading is exact', () => {
    const exact = (values: number[]) => censoredMean(values.map((value) => ({ low: value, high: value })))!;
    const { difference, interval, p } = censoredDifference(exact(g1), exact(g2));
    const { low, high } = interval(0.95);
    expect(difference).toBeCloseTo(-1.58, 10);
    expect(worstLre([low, high], expected.welch.ci)).toBeGreaterThan(6);
    expect(lre(p(0), expected.welch.p)).toBeGreaterThan(6);
  });

  it('log-rank test of the remission times (R survdiff)', () => {
    const { time6, event6, timeP, eventP, logrank_chisq, logrank_p, obs, exp } = survival.leukemia_6mp;
    const arm = (times: number[], events: number[]) => times.map((time, i) => ({ time, event: Boolean(events[i]) }));
    const found = logRankTest([arm(time6, event6), arm(timeP, eventP)])!;
    expect(lre(found.statistic, logrank_chisq)).toBeGreaterThan(10);
    expect(lre(found.p, logrank_p)).toBeGreaterThan(10);
    expect(found.observed).toEqual(obs);
    expect(worstLre(found.expected, exp)).toBeGreaterThan(10);
  });

  it('Hedges’ g covers no effect exactly when the pooled t test does', () => {
    // g = d·(1 − 3/(4·18 − 1)), d = t·√(1/10 + 1/10) of the pooled test above.
    const { g, low, high } = hedgesG(g1, g2)!;
    expect(g).toBeCloseTo(expected.pooled.t * Math.sqrt(0.2) * (1 - 3 / 71), 10);
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
    const { high: edge } = hedgesG(g1, g2, 1 - expected.pooled.p)!;
    expect(edge).toBeCloseTo(0, 6);
  });
});

describe('equivalence against the R packages equivalence and multeq (quoted in an open test suite)', () => {
  const { group1, group2, cases } = reference.tost;
  const caseOf = (start: string) => cases.find(({ name }) => name.startsWith(start))!;
  const run = (input: object) => runCalculation(equivalenceCalculation, input).results;

  it.each([
    ['welch var1 +-0.6', { a: group1.var1, b: group2.var1, lowerBound: -0.6, upperBound: 0.6 }],
    ['welch var2 +-0.6', { a: group1.var2, b: group2.var2, lowerBound: -0.6, upperBound: 0.6 }],
    ['paired var1 +-0.6', { a: group1.var1, b: group2.var1, lowerBound: -0.6, upperBound: 0.6, design: 'paired' }],
  ])('%s', (name, input) => {
    const { ci90, p_tost } = caseOf(name);
    const { difference, p } = run(input);
    expect(lre(p!.value, p_tost)).toBeGreaterThan(9);
    expect(worstLre([difference!.low, difference!.high], ci90!)).toBeGreaterThan(9);
    expect(difference!.level).toBeCloseTo(0.9, 12);
  });

  it('a ratio, by paired logarithms', () => {
    const { diff, ci90, p_tost } = caseOf('ratio');
    const { difference, p } = run({ a: group1.var1, b: group2.var1, lowerBound: 1 / 1.25, upperBound: 1.25, design: 'paired', scale: 'ratio' });
    expect(lre(p!.value, p_tost)).toBeGreaterThan(9);
    expect(worstLre([Math.log(difference!.value!), Math.log(difference!.low!), Math.log(difference!.high!)], [diff!, ...ci90!])).toBeGreaterThan(9);
  });

  it('uneven margins −1.0 to 0.6, second group minus first', () => {
    const { p } = run({ a: group2.var1, b: group1.var1, lowerBound: -1, upperBound: 0.6 });
    expect(lre(p!.value, caseOf('welch var1 margins').p_tost)).toBeGreaterThan(9);
  });
});
