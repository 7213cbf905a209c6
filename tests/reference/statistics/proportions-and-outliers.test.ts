import { describe, expect, it } from 'vitest';
import { clopperPearson } from '../../../shared-lib/statistics/clopper-pearson.ts';
import { grubbsCritical, grubbsTest } from '../../../shared-lib/statistics/grubbs.ts';
import { shapiroWilk } from '../../../shared-lib/statistics/shapiro-wilk.ts';
import binomial from './binomial.json';
import grubbs from './grubbs.json';
import { lre, worstLre } from './lre.ts';
import shapiro from './shapiro.json';

const { source: _source, ...proportions } = binomial;

describe('the exact interval of a proportion against R (binom.test)', () => {
  it.each(Object.entries(proportions))('%s', (_, { x, n, ci }) => {
    const { low, high } = clopperPearson(x, n);
    expect(worstLre([low, high], ci)).toBeGreaterThan(10);
  });
});

describe('Grubbs’ test', () => {
  it('has the critical values of its formula for n = 3 to 30, one- and two-sided', () => {
    for (const [n, row] of Object.entries(grubbs.critical_by_n)) {
      expect(lre(grubbsCritical(Number(n), 0.05), row['two_sided_0.05'])).toBeGreaterThan(10);
      expect(lre(grubbsCritical(Number(n), 0.01), row['two_sided_0.01'])).toBeGreaterThan(10);
      expect(lre(grubbsCritical(Number(n), 0.05, 1), row['one_sided_0.05'])).toBeGreaterThan(10);
      expect(lre(grubbsCritical(Number(n), 0.01, 1), row['one_sided_0.01'])).toBeGreaterThan(10);
    }
  });

  it('finds the outlier of the NIST/SEMATECH e-Handbook example (1.3.5.17.1; data from memory, G = 2.4687 as printed there)', () => {
    const { data, G, 'crit_two_sided_0.05': critical } = grubbs.nist_example;
    const test = grubbsTest(data)!;
    expect(lre(test.statistic, G)).toBeGreaterThan(10);
    expect(lre(test.critical, critical)).toBeGreaterThan(10);
    expect(test).toMatchObject({ index: data.indexOf(245.57), outlying: true });
    expect(test.p).toBeLessThan(0.05);
  });
});

describe('Shapiro–Wilk against R (shapiro.test)', () => {
  it.each(shapiro.cases.map((one) => [one.x.length, one] as const))('n = %i', (_, { x, W, p }) => {
    const test = shapiroWilk(x)!;
    expect(lre(test.w, W)).toBeGreaterThan(8);
    expect(lre(test.p, p)).toBeGreaterThan(6);
  });
});
