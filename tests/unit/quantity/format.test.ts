import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import { columnDecimals, decimalsFor, formatNumber, formatValue, plainDecimals } from '../../../shared-lib/quantity/format.ts';

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
    // JCGM 100:2008, 7.2.6: at most two significant digits of the uncertainty, here always two of the half-width:
    // 0.80, 0.25, 0.35, 0.36, 0.96; 0.996 rounds up to 1.0; whole numbers at the least.
    [37.6, 39.2, 2],
    [38, 38.5, 2],
    [0, 0.708, 2],
    [0, 0.71, 2],
    [0, 1.92, 2],
    [0, 1.992, 1],
    [30, 50, 0],
    [100, 900, 0],
    [1, 1, 0],
    [1.25, 1.25, 2],
  ])('an interval from %d to %d supports %i decimals', (low, high, decimals) => {
    expect(decimalsFor(low, high)).toBe(decimals);
  });

  // The examples of JCGM 100:2008, 7.2.2 and 7.2.6: m_S = 100.021 47 g with u = 0.35 mg; R = 10.057 62 Ω with u = 27 mΩ
  // is to be rounded to 10.058 Ω (from memory).
  it('rounds as the Guide does', () => {
    expect(formatNumber(100.02147, decimalsFor(100.02147 - 0.00035, 100.02147 + 0.00035))).toBe('100.02147');
    expect(formatNumber(10.05762, decimalsFor(10.05762 - 0.027, 10.05762 + 0.027))).toBe('10.058');
  });

  it('rounds so that the half-width loses at most a twentieth', () => {
    fc.assert(fc.property(fc.double({ min: 1e-8, max: 1e8, noNaN: true }), (halfWidth) => {
      const step = 10 ** -decimalsFor(-halfWidth, halfWidth);
      if (decimalsFor(-halfWidth, halfWidth) > 0) expect(step / 2 / halfWidth).toBeLessThanOrEqual(1 / 19.9);
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
    [{ value: 38.4123, low: 37.6, high: 39.2, level: 0.95 }, '38.41 mN/m', '95 % interval 37.60 to 39.20'],
    [{ value: 38.4123, low: 37.4, high: 39.4 }, '38.4 mN/m', 'range 37.4 to 39.4'],
    [{ value: 4, low: 4, high: 5, unit: '' }, '4', 'range 4 to 5'],
    [{ value: 3.5, low: 3, high: 4, unit: '' }, '3.5', 'range 3.0 to 4.0'],
    [{ value: 0.5, unit: '', low: 0.44, high: 0.56, level: 0.999 }, '0.500', '99.9 % interval 0.440 to 0.560'],
    [{ value: 3.1, unit: 'N/15 mm', bound: 'at-least', low: 3.1 }, '≥ 3.1 N/15 mm', ''],
    [{ value: 3.1, unit: 'N/15 mm', bound: 'at-least', low: 2.8, level: 0.95 }, '≥ 3.1 N/15 mm', '95 % interval from 2.8'],
    [{ value: 30, bound: 'at-most', high: 30 }, '≤ 30 mN/m', ''],
    [{ value: 39, low: 38, high: 40, bound: 'between' }, 'between 38 and 40 mN/m', ''],
    [{ low: 38, bound: 'between' }, '≥ 38 mN/m', ''],
    [{ bound: 'between' }, '—', ''],
    [{}, '—', ''],
    [{ value: 4.5, text: '4-5', unit: '' }, '4-5', ''],
    [{ value: 4.5, text: '4-5', unit: '', bound: 'at-least', low: 4.5 }, '≥ 4-5', ''],
    [{ value: null, text: 'undecided', unit: '' }, 'undecided', ''],
    [{ value: 12.5, low: 3.2, level: 0.95 }, '12.5 mN/m', '95 % interval from 3.2'],
    [{ value: -2.5, low: -4, high: -1, level: 0.95 }, '−2.5 mN/m', '95 % interval −4.0 to −1.0'],
  ])('%j', (part, text, intervalText) => {
    expect(formatValue(result(part))).toEqual({ text, intervalText });
  });

  it.each<[Partial<ResultValue>, number[], string, string]>([
    // Two digits of the half-width would print the lower end as the limit itself.
    [{ value: 3.08, low: 2.5041, high: 3.656, level: 0.95 }, [2.5], '3.080 mN/m', '95 % interval 2.504 to 3.656'],
    [{ value: 3.08, low: 2.5, high: 3.66, level: 0.95 }, [2.5], '3.08 mN/m', '95 % interval 2.50 to 3.66'],
    // '2.50' would stand below the limit, the end lies above it.
    [{ value: 3.08, low: 2.5048, high: 3.66, level: 0.95 }, [2.504], '3.080 mN/m', '95 % interval 2.505 to 3.660'],
    [{ value: 1.79996 }, [1.8], '1.79996 mN/m', ''],
    [{ value: 5.0004, bound: 'at-most', high: 5.0004 }, [5], '≤ 5.0004 mN/m', ''],
    // A difference of computing, not of measuring.
    [{ value: 2.1 + 0.4 - 1e-12 }, [2.5], '2.5 mN/m', ''],
  ])('%j against %j', (part, limits, text, intervalText) => {
    expect(formatValue(result(part), limits)).toEqual({ text, intervalText });
  });

  it('stands on the side of the limit where it is, in print too', () => {
    const limit = 2.5;
    fc.assert(fc.property(fc.double({ min: -0.4, max: 0.4, noNaN: true }).filter((off) => Math.abs(off) > 1e-5), fc.double({ min: 0.01, max: 5, noNaN: true }), (off, width) => {
      const low = limit + off;
      const printed = Number(/interval (\S+) to/.exec(formatValue(result({ value: low + width / 2, low, high: low + width, level: 0.95 }), [limit]).intervalText)![1]!.replace('−', '-'));
      expect(Math.sign(printed - limit)).toBe(Math.sign(low - limit));
    }));
  });
});

describe('the numbers of a column', () => {
  it.each<[number[], number | null]>([
    [[0, 0.8333, 0.166667, 0], 4],
    [[0.3588, 0.004211, 0], 4],
    [[50, 150, 1050], 0],
    [[100, 93.859, 88.6], 1],
    [[0.5, 0.00012, 0], 5],
    [[], 0],
    [[0, 0], 0],
    // From 0.00002 to 1250 no common count of decimals shows both.
    [[1250, 0.00002], null],
  ])('%j share %j decimals', (values, decimals) => {
    expect(columnDecimals(values)).toBe(decimals);
  });
});
