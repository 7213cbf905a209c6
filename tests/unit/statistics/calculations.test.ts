import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import type { Calculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { censoredNormalCalculation } from '../../../shared-lib/statistics/censored-normal.calculation.ts';
import { fitCalculation } from '../../../shared-lib/statistics/fit.calculation.ts';
import { kaplanMeierCalculation } from '../../../shared-lib/statistics/kaplan-meier.calculation.ts';
import { regressionCalculation } from '../../../shared-lib/statistics/regression.calculation.ts';
import { summaryCalculation } from '../../../shared-lib/statistics/summary.calculation.ts';
import nonlinear from '../../reference/statistics/nist-nonlinear.json';

/** The problem that a calculation reports for an input it refuses. */
function refusal(calculation: Calculation, input: unknown): { field: string; message: string } {
  try {
    runCalculation(calculation, input);
  } catch (error) {
    if (error instanceof InputError) return { field: error.field, message: error.message };
    throw error;
  }
  throw new Error('the input was taken');
}

describe('summary', () => {
  // Uranium isotope readings, NIST/SEMATECH e-Handbook 1.3.5.17.1 (from memory; G = 2.4687 as printed there).
  const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

  it('flags an outlier and keeps it', () => {
    const { results, flags } = runCalculation(summaryCalculation, { values, unit: 'counts' });
    expect(results.mean!.value).toBeCloseTo(206.43375, 10);
    expect(results.mean).toMatchObject({ unit: 'counts', n: 8, level: 0.95, bound: 'exact' });
    expect(results.outlierG!.value).toBeCloseTo(2.4687646, 6);
    expect(flags.map(({ code, where }) => [code, where])).toEqual([['outlier', 'values[7]'], ['not-normal', 'values']]);
  });

  it('gives the chi-square interval of the standard deviation', () => {
    // s 0.1 with n = 10: 0.0688 to 0.1826 (chi-square 19.0228 and 2.70039 with 9 degrees of freedom, handbook table).
    const spread = [...Array<number>(5).fill(-1), ...Array<number>(5).fill(1)].map((side) => side * 0.1 * Math.sqrt(9 / 10));
    const { standardDeviation } = runCalculation(summaryCalculation, { values: spread }).results;
    expect(standardDeviation!.value).toBeCloseTo(0.1, 12);
    expect(standardDeviation!.low).toBeCloseTo(0.1 * Math.sqrt(9 / 19.0228), 6);
    expect(standardDeviation!.high).toBeCloseTo(0.1 * Math.sqrt(9 / 2.70039), 6);
  });

  it('says why what cannot be given is missing', () => {
    const one = runCalculation(summaryCalculation, { values: [38] });
    expect(one.results.standardDeviation!.value).toBeNull();
    expect(one.results.mean).toMatchObject({ value: 38, low: null, high: null, level: null });
    expect(one.notes.join(' ')).toMatch(/One reading/);
    const equal = runCalculation(summaryCalculation, { values: [38, 38, 38] });
    expect(equal.results.normalityP!.value).toBeNull();
    expect(equal.notes.join(' ')).toMatch(/equal/);
  });

  it('refuses', () => {
    expect(refusal(summaryCalculation, { values: [] }).field).toBe('values');
    expect(refusal(summaryCalculation, { values: [1, 'torn'] }).field).toBe('values[1]');
    expect(refusal(summaryCalculation, { values: [1], level: 2 }).field).toBe('level');
    expect(refusal(summaryCalculation, { values: [1], mean: 2 }).message).toMatch(/mean/);
  });
});

describe('censored-normal', () => {
  it('takes exact, bracketed and one-sided readings together', () => {
    const { results } = runCalculation(censoredNormalCalculation, { observations: [{ exact: 3 }, { low: 3.1 }, { low: 2.8, high: 3.4 }, { high: 3.2 }, { exact: 3.3 }], unit: 'N/15 mm' });
    expect(results.mean).toMatchObject({ unit: 'N/15 mm', n: 5, level: 0.95, bound: 'exact' });
    expect(results.mean!.low!).toBeLessThan(results.mean!.value!);
    expect(results.standardDeviation!.value!).toBeGreaterThan(0);
    expect(results.logLikelihood!.value).not.toBeNull();
  });

  it.each<[string, object[], object]>([
    ['a bracket', [{ low: 38, high: 40 }], { value: 39, low: 38, high: 40, bound: 'between', level: null }],
    ['lower bounds only', [{ low: 3 }, { low: 4 }], { value: 3.5, low: 3.5, high: null, bound: 'at-least' }],
    ['upper bounds only', [{ high: 30 }], { value: 30, low: null, high: 30, bound: 'at-most' }],
    ['one exact, one torn', [{ exact: 3 }, { low: 3.1 }], { value: 3, low: 3, high: null, bound: 'at-least' }],
    ['contradicting bounds', [{ low: 40 }, { low: 40 }, { high: 38 }], { value: null, low: null, high: null, bound: 'between' }],
  ])('%s', (_, observations, expected) => {
    const { results, notes } = runCalculation(censoredNormalCalculation, { observations });
    expect(results.mean).toMatchObject(expected);
    expect(notes.length).toBeGreaterThan(0);
  });

  it('refuses', () => {
    expect(refusal(censoredNormalCalculation, { observations: [{ exact: 1 }, {}] }).field).toBe('observations[1]');
    expect(refusal(censoredNormalCalculation, { observations: [{ low: 40, high: 38 }] }).message).toMatch(/low 40 above high 38/);
    expect(refusal(censoredNormalCalculation, { observations: [{ exact: 3, low: 2 }] }).message).toMatch(/either exact or/);
    expect(refusal(censoredNormalCalculation, { observations: [] }).field).toBe('observations');
  });
});

describe('kaplan-meier', () => {
  it('gives the median and a row per time (6-MP arm, Freireich 1963: median 23, S(10) 0.7529)', () => {
    const times = [10, 7, 32, 23, 22, 6, 16, 34, 32, 25, 11, 20, 19, 6, 17, 35, 6, 13, 9, 6, 10];
    const events = [1, 1, 0, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0];
    const { results, table, figures } = runCalculation(kaplanMeierCalculation, { times, events });
    expect(results.median).toMatchObject({ value: 23, low: 13, high: null, bound: 'exact' });
    expect(table.find((row) => row.time === 10)!.survival).toBeCloseTo(0.7529, 4);
    expect(figures[0]!.finding).toContain('23');
  });

  it('says that the median lies beyond the last time', () => {
    const { results, notes } = runCalculation(kaplanMeierCalculation, { times: [5, 6, 7], events: [true, false, false] });
    expect(results.median).toMatchObject({ value: 7, bound: 'at-least' });
    expect(notes[0]).toMatch(/beyond the last time/);
  });

  it('refuses', () => {
    expect(refusal(kaplanMeierCalculation, { times: [1, 2], events: [true] }).field).toBe('events');
    expect(refusal(kaplanMeierCalculation, { times: [1], events: [2] }).field).toMatch(/^events/);
  });
});

describe('fit', () => {
  const { x, y, start1, certified, certified_sd, rss } = nonlinear.Misra1a;

  it('gives the certified answer of a NIST set with its errors, sum and state', () => {
    const { results, table, figures } = runCalculation(fitCalculation, { model: 'Misra1a', x, y, start: start1 });
    certified.forEach((value, i) => {
      expect(results[`b${i + 1}`]!.value! / value).toBeCloseTo(1, 8);
      expect(results[`b${i + 1}StandardError`]!.value! / certified_sd[i]!).toBeCloseTo(1, 7);
      expect(table[i]).toMatchObject({ parameter: `b${i + 1}`, value: results[`b${i + 1}`]!.value });
    });
    expect(results.residualSumOfSquares!.value! / rss).toBeCloseTo(1, 9);
    expect(results.converged!.value).toBe(1);
    expect(figures[0]!.series.map(({ role }) => role)).toEqual(['reading', 'fit']);
  });

  it('gives no parameters when the search did not come to rest', () => {
    const hard = nonlinear.MGH10;
    const { results, flags } = runCalculation(fitCalculation, { model: 'MGH10', x: hard.x, y: hard.y, start: hard.start1 });
    expect(results.converged!.value).toBe(0);
    expect(results.b1!.value).toBeNull();
    expect(flags[0]!.code).toBe('not-converged');
  });

  it('takes several starts and keeps the best', () => {
    const hard = nonlinear.MGH10;
    const { results } = runCalculation(fitCalculation, { model: 'MGH10', x: hard.x, y: hard.y, start: [hard.start1, hard.start2] });
    expect(results.b1!.value! / hard.certified[0]!).toBeCloseTo(1, 6);
  });

  it('refuses', () => {
    expect(refusal(fitCalculation, { model: 'Misra', x, y, start: start1 }).field).toBe('model');
    expect(refusal(fitCalculation, { model: 'Misra1a', x, y: [1], start: start1 }).field).toBe('y');
    expect(refusal(fitCalculation, { model: 'Misra1a', x, y, start: [1] }).field).toBe('start');
    expect(refusal(fitCalculation, { model: 'Eckerle4', x, y, start: [1, 0, 1] }).message).toMatch(/starting values/);
    expect(refusal(fitCalculation, { model: 'Misra1a', x: [1], y: [1], start: start1 }).message).toMatch(/at least 2 points/);
  });
});

describe('regression', () => {
  const x = [0, 2, 4, 6, 8, 10, 12];
  const y = [2.1, 5, 9, 12.6, 17.3, 21, 24.7];

  it('gives the line of the fluorescein example (Miller and Miller, chapter 5: 1.93x + 1.52, r 0.9989)', () => {
    const { results, table, figures } = runCalculation(regressionCalculation, { x, y });
    expect(table.map(({ term }) => term)).toEqual(['intercept', 'x1']);
    expect(table[0]!.value).toBeCloseTo(1.517857, 6);
    expect(table[1]!.value).toBeCloseTo(1.930357, 6);
    expect(table[1]!.standardError).toBeCloseTo(0.0409, 6);
    expect(Math.sqrt(results.rSquared!.value!)).toBeCloseTo(0.99888, 5);
    expect(results.residualSd!.value).toBeCloseTo(0.432848, 6);
    expect(results.F!.value).toBeCloseTo((1.9303571428 / 0.0409002645) ** 2, 3);
    expect(figures.length).toBe(1);
  });

  it('takes predictors by reading or by predictor', () => {
    const squares = x.map((value) => value * value);
    const byReading = runCalculation(regressionCalculation, { x: x.map((value, i) => [value, squares[i]]), y });
    const byPredictor = runCalculation(regressionCalculation, { x: [x, squares], y });
    expect(byReading.table).toEqual(byPredictor.table);
    expect(byReading.table.map(({ term }) => term)).toEqual(['intercept', 'x1', 'x2']);
  });

  it('notes R² about zero and the F of an exact fit', () => {
    expect(runCalculation(regressionCalculation, { x, y, intercept: false }).notes.join(' ')).toMatch(/about zero/);
    const exact = runCalculation(regressionCalculation, { x, y: x.map((value) => 1 + 2 * value) });
    expect(exact.results.F!.value).toBeNull();
    expect(exact.notes.join(' ')).toMatch(/exact/);
  });

  it('refuses', () => {
    expect(refusal(regressionCalculation, { x: [1, 2], y }).field).toBe('x');
    expect(refusal(regressionCalculation, { x: x.map(() => 1), y }).message).toMatch(/does not vary/);
    expect(refusal(regressionCalculation, { x: [...x.slice(1).map((value) => [value, 1]), [3]], y }).field).toBe('x[6]');
    expect(refusal(regressionCalculation, { x, y, weights: [1] }).field).toBe('weights');
    expect(refusal(regressionCalculation, { x: [1e308, -1e308, 3], y: [1, 2, 3] }).message).toMatch(/too large/);
  });
});
