import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import { decimalsFor, formatNumber, formatValue, plainDecimals } from '../../../shared-lib/quantity/format.ts';

function result(part: Partial<ResultValue>): ResultValue {
  return { value: null, unit: 'mN/m', low: null, high: null, level: null, n: 5, bound: 'exact', ...part };
}

describe('numbers as text', () => {
  it.each([
    [38.4, 1, '38.4'],
    [-3, 0, '−3'],
    [-0.04, 1, '0.0'],
    [1234567.891, 2, '1234567.89'],
    [Number.NaN, 2, '—'],
    [Infinity, 2, '—'],
  ])('%d with %i decimals', (value, decimals, text) => {
    expect(formatNumber(value, decimals)).toBe(text);
  });

  it.each([
    // Half-width 0.8 → one digit; 0.25 → two; 0.354 → two; 0.355 → one; 0.96 rounds up to 1.0 → two (PDG rule).
    [37.6, 39.2, 1],
    [38, 38.5, 2],
    [0, 0.708, 2],
    [0, 0.71, 1],
    [0, 1.92, 1],
    [100, 900, 0],
    [1, 1, 0],
    [1.25, 1.25, 2],
  ])('an interval from %d to %d supports %i decimals', (low, high, decimals) => {
    expect(decimalsFor(low, high)).toBe(decimals);
  });

  it('rounds so that the half-width loses at most a seventh', () => {
    fc.assert(fc.property(fc.double({ min: 1e-8, max: 1e8, noNaN: true }), (halfWidth) => {
      const step = 10 ** -decimalsFor(-halfWidth, halfWidth);
      if (decimalsFor(-halfWidth, halfWidth) > 0) expect(step / 2 / halfWidth).toBeLessThanOrEqual(1 / 7);
    }));
  });

  it('shows a lone number with four significant digits and no zeros at the end', () => {
    expect(formatNumber(3.1, plainDecimals(3.1))).toBe('3.1');
    expect(formatNumber(3.14159, plainDecimals(3.14159))).toBe('3.142');
    expect(formatNumber(9.9996, plainDecimals(9.9996))).toBe('10');
    expect(formatNumber(0.000123456, plainDecimals(0.000123456))).toBe('0.0001235');
  });
});

describe('results as text', () => {
  it.each<[Partial<ResultValue>, string, string]>([
    [{ value: 38.4123, low: 37.6, high: 39.2, level: 0.95 }, '38.4 mN/m', '95 % interval 37.6 to 39.2'],
    [{ value: 38.4123, low: 37.4, high: 39.4 }, '38.4 mN/m', 'range 37.4 to 39.4'],
    [{ value: 0.5, unit: '', low: 0.44, high: 0.56, level: 0.999 }, '0.50', '99.9 % interval 0.44 to 0.56'],
    [{ value: 3.1, unit: 'N/15 mm', bound: 'at-least', low: 3.1 }, '≥ 3.1 N/15 mm', ''],
    [{ value: 3.1, unit: 'N/15 mm', bound: 'at-least', low: 2.8, level: 0.95 }, '≥ 3.1 N/15 mm', '95 % interval from 2.8'],
    [{ value: 30, bound: 'at-most', high: 30 }, '≤ 30 mN/m', ''],
    [{ value: 39, low: 38, high: 40, bound: 'between' }, 'between 38 and 40 mN/m', ''],
    [{ low: 38, bound: 'between' }, '≥ 38 mN/m', ''],
    [{ bound: 'between' }, '—', ''],
    [{}, '—', ''],
    [{ value: 12.5, low: 3.2, level: 0.95 }, '12.5 mN/m', '95 % interval from 3.2'],
    [{ value: -2.5, low: -4, high: -1, level: 0.95 }, '−2.5 mN/m', '95 % interval −4.0 to −1.0'],
  ])('%j', (part, text, intervalText) => {
    expect(formatValue(result(part))).toEqual({ text, intervalText });
  });
});
