import { describe, expect, it } from 'vitest';
import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import { allowForStudy, type MethodStudy } from '../../../shared-lib/method/method-study.ts';
import { judge } from '../../../shared-lib/method/verdict.ts';

const result: ResultValue = { value: 3, unit: 'N/15 mm', low: 2.9, high: 3.1, level: 0.95, n: 4, bound: 'exact' };
const study: MethodStudy = { property: 'mean', repeatability: 0.2, reproducibility: 0.15, text: 'gauge s 0.25 N/15 mm, 2026-01-30' };
const limit = { property: 'mean', lower: 2.75, upper: null, source: 'customer' };
/** By hand: u = √(0.2²/4 + 0.15²) = √0.0325 = 0.180278; U = 1.959964 · u (normal, 95 %: any table). */
const U = 0.353338;

describe('a result beside the measurement study of its method', () => {
  it('counts no narrower than the study allows', () => {
    const { low, high, value, n } = allowForStudy(result, study);
    expect(low).toBeCloseTo(3 - U, 5);
    expect(high).toBeCloseTo(3 + U, 5);
    expect({ value, n }).toEqual({ value: 3, n: 4 });
  });

  it('keeps a wider interval as it is, each side for itself', () => {
    expect(allowForStudy({ ...result, low: 2, high: 4 }, study)).toEqual({ ...result, low: 2, high: 4 });
    const lopsided = allowForStudy({ ...result, low: 2 }, study);
    expect(lopsided.low).toBe(2);
    expect(lopsided.high).toBeCloseTo(3 + U, 5);
  });

  it('does not narrow with more readings below what persons differ by', () => {
    const { low } = allowForStudy({ ...result, low: 2.99, high: 3.01, n: 10_000 }, study);
    expect(low).toBeCloseTo(3 - 1.959964 * 0.15, 3);
  });

  it.each<[string, Partial<ResultValue>]>([
    ['no interval', { low: null, high: null, level: null, n: 1 }],
    ['a stated range', { level: null }],
    ['a bracket', { bound: 'between', level: null }],
    ['a lower bound', { bound: 'at-least', high: null }],
    ['no value', { value: null }],
  ])('leaves %s alone', (_what, part) => {
    expect(allowForStudy({ ...result, ...part }, study)).toEqual({ ...result, ...part });
  });

  it('of a grade widens nothing', () => {
    expect(allowForStudy(result, { ...study, repeatability: null, reproducibility: null })).toBe(result);
  });
});

describe('a verdict', () => {
  it('that the readings alone would have given is withheld where the method cannot carry it', () => {
    expect(judge(result, limit, 'guarded').verdict).toBe('meets');
    const verdict = judge(result, limit, 'guarded', study);
    expect(verdict.verdict).toBe('undecided');
    expect(verdict.study).toBe('gauge s 0.25 N/15 mm, 2026-01-30; counts as 2.65 to 3.35 against the limit');
    expect(verdict.probability!).toBeLessThan(judge(result, limit, 'guarded').probability!);
  });

  it('by the simple rule stays, with the study beside it', () => {
    expect(judge(result, limit, 'simple', study)).toMatchObject({ verdict: 'meets', study: study.text });
  });

  it('names the study also where there is no limit, and nothing where there is no study', () => {
    expect(judge(result, null, 'guarded', study)).toMatchObject({ verdict: 'no limit', study: study.text });
    expect('study' in judge(result, limit, 'guarded')).toBe(false);
  });
});
