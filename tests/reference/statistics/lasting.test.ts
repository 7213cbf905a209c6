import { describe, expect, it } from 'vitest';
import { summariseLasting } from '../../../shared-lib/statistics/lasting.ts';
import censored from './censored.json';
import survival from './kaplan-meier.json';

/* Weeks of remission, 6-MP arm (E. J. Freireich et al. 1963), computed in R 4.2.2: survfit median 23, survreg log-normal
   with mu 3.20306765. What lasts is counted the same way whether weeks or strokes. */
describe('lasting with lower bounds, against R', () => {
  const { time6, event6 } = survival.leukemia_6mp;
  const { typical, median, least } = summariseLasting(time6.map((value, index) => ({ value, ended: event6[index] === 1 })), 'weeks', 0.95);

  it('median by survfit', () => expect(median.value).toBe(23));
  it('geometric mean by survreg', () => expect(Math.log(typical.value!)).toBeCloseTo(censored.param_6mp.lognormal_mu, 6));
  it('the least: three ended at 6 weeks, where one was also last seen', () => expect(least).toMatchObject({ value: 6, bound: 'exact' }));
});
