import { describe, expect, it } from 'vitest';
import { fitCensoredNormal } from '../../../shared-lib/statistics/censored-normal.ts';
import type { Censored } from '../../../shared-lib/statistics/censored-normal.ts';
import censored from './censored.json';
import survival from './kaplan-meier.json';
import { lre } from './lre.ts';

function exact(values: number[]): Censored[] {
  return values.map((value) => ({ low: value, high: value }));
}

describe('the censored normal fit against R', () => {
  it('interval-censored: fitdistrplus and survreg on four brackets', () => {
    const { left, right, mu, sigma, loglik } = censored.normal_interval4;
    const fit = fitCensoredNormal(left.map((low, i) => ({ low, high: right[i]! })));
    expect(fit.status).toBe('estimated');
    expect(lre(fit.mean, mu)).toBeGreaterThan(8);
    expect(lre(fit.standardDeviation, sigma)).toBeGreaterThan(8);
    expect(lre(fit.logLikelihood, loglik)).toBeGreaterThan(10);
  });

  it('right-censored: remission times of the 6-MP arm, survreg', () => {
    const { time6, event6 } = survival.leukemia_6mp;
    const fit = fitCensoredNormal(time6.map((time, i) => ({ low: time, high: event6[i] ? time : null })));
    expect(lre(fit.mean, censored.param_6mp.normal_mu)).toBeGreaterThan(8);
    expect(lre(fit.standardDeviation, censored.param_6mp.normal_sigma)).toBeGreaterThan(8);
    expect(lre(fit.logLikelihood, censored.param_6mp.normal_loglik)).toBeGreaterThan(10);
  });

  it('right-censored on a logarithmic scale: the same arm, survreg', () => {
    const { time6, event6 } = survival.leukemia_6mp;
    const fit = fitCensoredNormal(time6.map((time, i) => ({ low: Math.log(time), high: event6[i] ? Math.log(time) : null })));
    expect(lre(fit.mean, censored.param_6mp.lognormal_mu)).toBeGreaterThan(8);
    expect(lre(fit.standardDeviation, censored.param_6mp.lognormal_sigma)).toBeGreaterThan(8);
  });

  it('heavily right-censored: locomotive controls as printed in a SAS manual (5e-4 and 5e-3 relative)', () => {
    const { exact: failed, right_censored_at: end, n_censored: running, mu, sigma } = censored.locomotive_lognormal;
    const fit = fitCensoredNormal([...exact(failed.map(Math.log)), ...Array<Censored>(running).fill({ low: Math.log(end), high: null })]);
    expect(Math.abs(fit.mean! / mu - 1)).toBeLessThan(5e-4);
    expect(Math.abs(fit.standardDeviation! / sigma - 1)).toBeLessThan(5e-3);
  });
});
