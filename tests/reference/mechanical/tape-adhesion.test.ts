import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { tapeAdhesionCalculation } from '../../../shared-lib/mechanical/tape-adhesion.calculation.ts';

const tape = (input: unknown) => runCalculation(tapeAdhesionCalculation, input).results;
const grades = (input: unknown) => [tape(input).gradeD3359!.text, tape(input).gradeISO2409!.value];

/*
 * Bands of area lost: ASTM D3359 method B as in three public tables, ISO 2409 classes 0 to 3 as in two (seen), 4 and 5 from
 * memory. At exactly 5 % ISO 2409 says 'not greater than 5', ASTM D3359 '5 to 15'. At 15 and 35 % D3359 is ambiguous;
 * decided: the better grade.
 */
describe('grades of ASTM D3359 and ISO 2409', () => {
  it.each([
    [0, '5B', 0],
    [0.1, '4B', 1],
    [4, '4B', 1],
    [5, '3B', 1],
    [5.1, '3B', 2],
    [15, '3B', 2],
    [16, '2B', 3],
    [35, '2B', 3],
    [36, '1B', 4],
    [65, '1B', 4],
    [66, '0B', 5],
    [100, '0B', 5],
  ])('%f %% lost: %s, class %i', (removedPct, d3359, iso2409) => {
    expect(grades({ removedPct })).toEqual([d3359, iso2409]);
  });

  /* Exact counts: 11 × 11 cuts make 100 squares of 1 %, 6 × 6 cuts 25 squares of 4 %. */
  it.each([
    [25, 1, '4B', 1],
    [25, 2, '3B', 2],
    [25, 4, '2B', 3],
    [25, 9, '1B', 4],
    [25, 17, '0B', 5],
    [100, 5, '3B', 1],
    [20, 7, '2B', 3],
  ])('of %i squares %i: %s, class %i', (total, removed, d3359, iso2409) => {
    expect(grades({ squares: { total, removed } })).toEqual([d3359, iso2409]);
  });
});

/* Clopper–Pearson limits of 4 in 100, 0 in 25 and 1 in 100, from the quantiles of the beta distribution by an independent library; 0 in n also 1 − 0.025^(1/n), exact. */
describe('the share retained by squares', () => {
  it.each([
    [100, 4, 1.10044939862, 9.92571567127],
    [25, 0, 0, 100 * (1 - 0.025 ** (1 / 25))],
    [100, 1, 0.025314603297742, 5.445938539208],
  ])('of %i with %i removed', (total, removed, low, high) => {
    const { retainedPct } = tape({ squares: { total, removed } });
    expect(retainedPct).toMatchObject({ value: 100 - (100 * removed) / total, unit: '%', level: 0.95, n: total });
    expect(100 - retainedPct!.high!).toBeCloseTo(low, 8);
    expect(100 - retainedPct!.low!).toBeCloseTo(high, 8);
  });
});
