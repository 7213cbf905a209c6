import { describe, expect, it } from 'vitest';
import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import { spanModels } from '../../../shared-lib/fade/span-models.ts';

const life = (value: number, low: number | null, high: number | null, more: Partial<ResultValue> = {}): ResultValue => ({
  value, low, high, unit: 'h', level: 0.95, n: 6, bound: 'exact', ...more,
});
const ends = ({ low, high }: ResultValue) => [low, high];

describe('the interval over several models', () => {
  it('holds those of all of them, and keeps the value of the chosen one', () => {
    const spanned = spanModels(life(100, 90, 110), [life(130, 95, 150), life(80, 70, 85)]);
    expect(spanned.value).toBe(100);
    expect(ends(spanned)).toEqual([70, 150]);
  });

  it('stays as it is without another model', () => expect(ends(spanModels(life(100, 90, 110), []))).toEqual([90, 110]));

  it('is open where one of them is, and ends at a bound where that is all a model says', () => {
    expect(ends(spanModels(life(100, 90, null), [life(130, 80, 150)]))).toEqual([80, null]);
    expect(ends(spanModels(life(100, 90, 110), [life(130, null, 150)]))).toEqual([null, 150]);
    expect(ends(spanModels(life(100, 90, 110), [life(60, null, null, { bound: 'at-least', level: null })]))).toEqual([60, null]);
    expect(ends(spanModels(life(100, 90, 110), [life(120, null, null, { bound: 'at-most', level: null })]))).toEqual([null, 120]);
  });

  it('leaves a bound and a life without an interval alone', () => {
    const bound = life(240, null, null, { bound: 'at-least', level: null });
    expect(spanModels(bound, [life(300, 250, 400)])).toEqual(bound);
    const lone = life(240, null, null, { level: null });
    expect(spanModels(lone, [life(300, 250, 400)])).toEqual(lone);
  });
});
