import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median } from '../../../shared-lib/bond-strength/select-median.ts';

function bySorting(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[sorted.length >> 1]!;
  const lower = sorted[(sorted.length - 1) >> 1]!;
  return lower + (upper - lower) / 2;
}

describe('the median by counting', () => {
  it('is that of the sorted values', () => {
    const value = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), fc.integer({ min: -2, max: 2 }));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 300 }), (values) => {
        expect(median(Float64Array.from(values)) + 0).toBe(bySorting(values) + 0);
      }),
      { numRuns: 500 },
    );
  });

  it('holds where one value far out leaves the others in one bin, and at the ends of the numbers', () => {
    expect(median(Float64Array.of(1, 2, 3, 4, 1e12))).toBe(3);
    expect(median(Float64Array.of(-1.7e308, 1, 1.7e308))).toBe(1);
  });
});
