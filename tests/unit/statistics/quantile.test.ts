import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median, quantile } from '../../../shared-lib/statistics/quantile.ts';

function bySorting(values: number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * p;
  const lower = sorted[Math.floor(at)]!;
  return lower + (at - Math.floor(at)) * (sorted[Math.ceil(at)]! - lower);
}

describe('the quantile by counting', () => {
  it('is that of the sorted values', () => {
    const value = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), fc.integer({ min: -2, max: 2 }));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 300 }), fc.double({ min: 0, max: 1, noNaN: true }), (values, p) => {
        // + 0: a zero may come back with either sign.
        expect(quantile(Float64Array.from(values), p) + 0).toBe(bySorting(values, p) + 0);
      }),
      { numRuns: 500 },
    );
  });

  it('gives the quartiles of type 7', () => {
    // R 4.3: quantile(c(2, 5, 7, 11, 13, 17), type = 7) gives 5.5, 9, 12.5 (from memory; by hand 5 + 0.25·2, (7 + 11)/2, 11 + 0.75·2).
    const values = Float64Array.of(13, 2, 11, 5, 17, 7);
    expect([0, 0.25, 0.5, 0.75, 1].map((p) => quantile(values, p))).toEqual([2, 5.5, 9, 12.5, 17]);
  });

  it('holds where one value far out leaves the others in one bin, and at the ends of the numbers', () => {
    expect(median(Float64Array.of(1, 2, 3, 4, 1e12))).toBe(3);
    expect(median(Float64Array.of(-1.7e308, 1, 1.7e308))).toBe(1);
  });
});
