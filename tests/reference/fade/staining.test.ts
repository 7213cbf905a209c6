import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { stainingCalculation } from '../../../shared-lib/fade/staining.calculation.ts';
import { stainingRating } from '../../../shared-lib/fade/grey-scale-staining.ts';
import { refusal } from '../../unit/surface-energy/refusal.ts';

const run = (after: unknown, before: unknown = [95, 0, 0]) => runCalculation(stainingCalculation, { before, after });

describe('grey scale for staining', () => {
  // Nominal steps of ISO 105-A03 (from memory), each a pair of greys that differ in lightness only.
  it.each([
    [0, 5, '5'],
    [2.2, 4.5, '4-5'],
    [4.3, 4, '4'],
    [6, 3.5, '3-4'],
    [8.5, 3, '3'],
    [12, 2.5, '2-3'],
    [16.9, 2, '2'],
    [24, 1.5, '1-2'],
    [34.1, 1, '1'],
  ])('a step of %d is grade %d (ISO 105-A04 rating within 0.02)', (step, grade, text) => {
    expect(Math.abs(stainingRating(step) - grade)).toBeLessThan(0.02);
    expect(run([95 - step, 0, 0]).results.grade).toMatchObject({ value: grade, text });
  });

  it('weighs what is not lightness less: ΔE 10 with ΔL 6 has 6.8', () => {
    // 10 − 0.4·√(100 − 36) = 6.8.
    expect(run([89, 8, 0]).results.deltaEGS!.value).toBeCloseTo(6.8, 10);
  });

  it('gives a mean with its interval, the grades the other way round', () => {
    const { deltaEGS, grade } = run([[91, 0, 0], [89, 0, 0], [87, 0, 0]]).results;
    expect(deltaEGS).toMatchObject({ value: 6, n: 3, level: 0.95 });
    expect(grade!.low!).toBeLessThan(grade!.high!);
  });

  it('flags what is no white and what grew lighter, and refuses readings that do not pair', () => {
    expect(run([40, 0, 0], [50, 0, 0]).flags.map(({ code }) => code)).toEqual(['no-white']);
    expect(run([95, 0, 0], [85, 0, 0]).flags.map(({ code }) => code)).toEqual(['lighter']);
    expect(refusal(() => run([[90, 0, 0], [91, 0, 0], [92, 0, 0]], [[95, 0, 0], [96, 0, 0]])).field).toBe('before');
  });
});
