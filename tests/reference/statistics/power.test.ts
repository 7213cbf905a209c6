import { describe, expect, it } from 'vitest';
import { studentTQuantile } from '../../../shared-lib/statistics/distributions.ts';
import { equivalencePower } from '../../../shared-lib/statistics/equivalence-power.ts';
import { noncentralFUpperTail, noncentralTUpperTail } from '../../../shared-lib/statistics/noncentral.ts';
import { oneWayPower } from '../../../shared-lib/statistics/one-way-power.ts';
import { atMostFailures, specimensForPassRate } from '../../../shared-lib/statistics/pass-rate.ts';
import { tPower } from '../../../shared-lib/statistics/t-power.ts';
import { twoSharePower } from '../../../shared-lib/statistics/two-share-power.ts';
import binomial from './binomial.json';
import { lre } from './lre.ts';
import reference from './power.json';

describe('power against R 4.2.2', () => {
  const { t, anova, prop } = reference;

  it('t tests', () => {
    expect(lre(tPower(20, 1, 1, 0.05), t.power_n20_d1_strict)).toBeGreaterThan(9);
    // R counts one tail here; the other is below 1e-8.
    expect(Math.abs(tPower(reference.n_for_90_exact, 1, 1, 0.05) - 0.9)).toBeLessThan(1e-7);
    expect(tPower(t['n_for_80_d0.5_strict'], 0.5, 1, 0.05)).toBeCloseTo(0.8, 6);
    expect(tPower(t['one_sample_n_80_d0.5'], 0.5, 1, 0.05, 'one-sample')).toBeCloseTo(0.8, 4);
    // R counts one tail: the other adds at most 2e-5 here.
    expect(Math.abs(tPower(10, 0.8, 1, 0.05, 'paired') - t['paired_power_n10_d0.8'])).toBeLessThan(3e-5);
  });

  it('one-way analysis of variance', () => {
    expect(lre(oneWayPower(5, 4, 1, 3, 0.05), anova.power_g4_n5_b1_w3)).toBeGreaterThan(9);
    expect(oneWayPower(anova.n_80_g4_b1_w3, 4, 1, 3, 0.05)).toBeCloseTo(0.8, 4);
  });

  it('two shares', () => {
    expect(lre(twoSharePower(50, 0.5, 0.75, 0.05), prop['power_n50_.5_.75'])).toBeGreaterThan(9);
    expect(twoSharePower(prop.n_90, 0.5, 0.75, 0.05)).toBeCloseTo(0.9, 4);
  });

  it('non-central tails become central ones', () => {
    expect(lre(noncentralTUpperTail(studentTQuantile(0.975, 7), 7, 0), 0.025)).toBeGreaterThan(11);
    // t² with one degree of freedom is F, and so are the non-central ones.
    const both = noncentralTUpperTail(2, 9, 1.5) + noncentralTUpperTail(2, 9, -1.5);
    expect(lre(noncentralFUpperTail(4, 1, 9, 1.5 ** 2), both)).toBeGreaterThan(10);
  });
});

describe('equivalence', () => {
  it('with a spread that is known for sure, power is 2·Φ(margin/error − z) − 1', () => {
    // n 20 000, margin 0.05 σ: error 0.01 σ, Φ(5 − 1.6449) = 0.999603 (normal table), so 0.999207.
    expect(equivalencePower(20_000, 0, -0.05, 0.05, 1, 0.05)).toBeCloseTo(0.999207, 5);
  });

  it('never exceeds alpha at the margin itself', () => {
    for (const n of [3, 5, 10, 50]) expect(equivalencePower(n, 1, -1, 1, 0.5, 0.05)).toBeLessThanOrEqual(0.05 + 1e-9);
  });
});

describe('showing a pass rate', () => {
  it.each([
    [0.95, 0, 0.95, 59],
    [0.9, 0, 0.95, 29],
    [0.99, 0, 0.95, 299],
    [0.95, 1, 0.95, 93],
  ])('%f with %i failures at %f takes %i specimens (success-run tables, common practice)', (rate, failures, level, n) => {
    expect(specimensForPassRate(rate, failures, level)).toBe(n);
  });

  it('binomial tails agree with the exact interval of R', () => {
    // At the upper end of the interval of 0 in 20, no success has probability 0.025.
    expect(atMostFailures(0, 20, binomial.zero20.ci[1]!)).toBeCloseTo(0.025, 10);
    expect(atMostFailures(5, 20, binomial.five20.ci[1]!)).toBeCloseTo(0.025, 10);
  });
});
