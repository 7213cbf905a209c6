import { afterAll, describe, expect, it } from 'vitest';
import { bartlettTest } from '../../../shared-lib/statistics/equal-spread.ts';
import { oneWayAnova } from '../../../shared-lib/statistics/one-way-anova.ts';
import { welchAnova } from '../../../shared-lib/statistics/welch-anova.ts';
import reference from './analysis-of-variance.json';
import { lre, printDigits } from './lre.ts';
import sets from './nist-anova.json';

/** Digits asked of F: what the data leave. SmLs07–09 (thirteen constant leading digits) hold only 4.2 to 4.4 in a double. */
const required: Record<string, number> = { SiRstv: 12, AtmWtAg: 9, SmLs01: 11, SmLs03: 11, SmLs04: 9, SmLs06: 9, SmLs07: 3, SmLs08: 3, SmLs09: 3 };

interface AnovaSet {
  certified: { SS_between: number; SS_within: number; F: number; R2: number; resid_sd: number; df_between: number; df_within: number };
  n_per_group: number;
  data?: Record<string, number[]>;
  group_base_offsets?: Record<string, number>;
  base?: number;
}

/** The sets SmLs are given by a rule; each value is read from its decimal digits. */
function readings({ data, group_base_offsets, base, n_per_group }: AnovaSet): number[][] {
  if (data) return Object.values(data);
  return Object.values(group_base_offsets!).map((offset) =>
    Array.from({ length: n_per_group }, (_, j) => {
      const tenths = Math.round(offset * 10) + (j === 0 ? 0 : j % 2 === 1 ? -1 : 1);
      return Number(`${base}.${tenths}`);
    }),
  );
}

describe('one-way analysis of variance against the NIST StRD sets', () => {
  const digits: Record<string, string | number>[] = [];
  afterAll(() => printDigits('NIST analysis of variance', digits));

  it('has a tolerance for every set', () => {
    expect(Object.keys(sets).sort()).toEqual(Object.keys(required).sort());
  });

  it.each(Object.entries(required))('%s', (name, asked) => {
    const set = sets[name as keyof typeof sets] as unknown as AnovaSet;
    const anova = oneWayAnova(readings(set))!;
    const { SS_between, SS_within, F, R2, resid_sd, df_between, df_within } = set.certified;
    const found = {
      F: lre(anova.f, F),
      between: lre(anova.between.sumOfSquares, SS_between),
      within: lre(anova.within.sumOfSquares, SS_within),
      R2: lre(anova.rSquared, R2),
      residualSd: lre(anova.residualSd, resid_sd),
    };
    digits.push({ set: name, ...found });
    expect(anova.between.degreesOfFreedom).toBe(df_between);
    expect(anova.within.degreesOfFreedom).toBe(df_within);
    for (const [figure, reached] of Object.entries(found)) expect(reached, figure).toBeGreaterThanOrEqual(asked);
  });
});

describe('analysis of variance against R 4.2.2', () => {
  const { ctrl, trt1, trt2, ...expected } = reference.oneway.plantgrowth;
  const groups = [ctrl, trt1, trt2];

  it('plant growth: one-way, Welch, Bartlett', () => {
    const anova = oneWayAnova(groups)!;
    expect(lre(anova.between.sumOfSquares, expected.SS[0]!)).toBeGreaterThan(10);
    expect(lre(anova.within.sumOfSquares, expected.SS[1]!)).toBeGreaterThan(10);
    expect(lre(anova.f, expected.F)).toBeGreaterThan(10);
    expect(lre(anova.p, expected.p)).toBeGreaterThan(10);
    const welch = welchAnova(groups)!;
    expect(lre(welch.f, expected.welchF)).toBeGreaterThan(10);
    expect(welch.numeratorDf).toBe(expected.welch_df[0]);
    expect(lre(welch.denominatorDf, expected.welch_df[1]!)).toBeGreaterThan(10);
    expect(lre(welch.p, expected.welch_p)).toBeGreaterThan(10);
    const bartlett = bartlettTest(groups)!;
    expect(lre(bartlett.statistic, expected.bartlett)).toBeGreaterThan(10);
    expect(lre(bartlett.p, expected.bartlett_p)).toBeGreaterThan(10);
  });

  it('gear diameters: equal spread by Bartlett (data e-Handbook 1.3.5.10; values by scipy)', () => {
    const { gear } = reference;
    const bartlett = bartlettTest(gear.groups)!;
    expect(lre(bartlett.statistic, gear.bartlett_T)).toBeGreaterThan(9);
    expect(lre(bartlett.p, gear.bartlett_p)).toBeGreaterThan(9);
  });
});
