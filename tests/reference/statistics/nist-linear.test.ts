import { afterAll, describe, expect, it } from 'vitest';
import { fitLinear, predictLinear } from '../../../shared-lib/statistics/linear-regression.ts';
import cars from './cars.json';
import { lre, printDigits, worstLre } from './lre.ts';
import sets from './nist-linear.json';

interface LinearSet {
  model: string;
  rows: number[][];
  certified: { params: number[]; sd: number[]; resid_sd: number; R2: number; F: number | string; df_res: number };
}

/** Digits that the coefficients must reach: what double arithmetic leaves of each problem. */
const required: Record<string, number> = {
  Norris: 11,
  Pontius: 9,
  NoInt1: 11,
  NoInt2: 11,
  Filip: 6,
  Longley: 8,
  Wampler1: 8,
  Wampler5: 6,
};

describe('regression against the NIST StRD linear sets', () => {
  const digits: Record<string, string | number>[] = [];
  afterAll(() => printDigits('NIST linear', digits));

  it('has a tolerance for every set', () => {
    expect(Object.keys(sets).sort()).toEqual(Object.keys(required).sort());
  });

  it.each(Object.entries(required))('%s', (name, coefficientDigits) => {
    const set = sets[name as keyof typeof sets] as LinearSet;
    const y = set.rows.map((row) => row[0]!);
    const degree = Number(/degree-(\d+)/.exec(set.model)?.[1] ?? 0);
    const columns = degree
      ? Array.from({ length: degree }, (_, j) => set.rows.map((row) => row[1]! ** (j + 1)))
      : set.rows[0]!.slice(1).map((_, j) => set.rows.map((row) => row[j + 1]!));
    const fit = fitLinear(columns, y, { intercept: !name.startsWith('NoInt') });
    const { params, sd, resid_sd, R2, F, df_res } = set.certified;
    const coefficients = worstLre(fit.coefficients, params);
    const errors = worstLre(fit.standardErrors!, sd);
    digits.push({ set: name, coefficients, standardErrors: errors, residualSd: lre(fit.residualSd, resid_sd), R2: lre(fit.rSquared, R2) });

    expect(fit.degreesOfFreedom).toBe(df_res);
    expect(coefficients).toBeGreaterThanOrEqual(coefficientDigits);
    expect(errors).toBeGreaterThanOrEqual(Math.min(coefficientDigits, 9));
    expect(lre(fit.residualSd, resid_sd)).toBeGreaterThanOrEqual(Math.min(coefficientDigits, 9));
    expect(lre(fit.rSquared, R2)).toBeGreaterThanOrEqual(Math.min(coefficientDigits, 9));
    if (F === 'Infinity') expect(fit.f).toBeNull();
    else expect(lre(fit.f, F as number)).toBeGreaterThanOrEqual(Math.min(coefficientDigits, 9));
  });
});

describe('confidence and prediction intervals of a line', () => {
  it('match R on the stopping distances of cars (lm and predict, R 4.2.2)', () => {
    const fit = fitLinear([cars.speed], cars.dist, { intercept: true });
    expect(worstLre(fit.coefficients, cars.coef)).toBeGreaterThan(9);
    expect(worstLre(fit.standardErrors!, cars.se)).toBeGreaterThan(9);
    cars.pred_x.forEach((x, i) => {
      const { value, low, high, predictionLow, predictionHigh } = predictLinear(fit, [x]);
      expect(worstLre([value, low, high], cars.ci.slice(3 * i, 3 * i + 3))).toBeGreaterThan(9);
      expect(worstLre([value, predictionLow, predictionHigh], cars.pi.slice(3 * i, 3 * i + 3))).toBeGreaterThan(9);
    });
  });
});
