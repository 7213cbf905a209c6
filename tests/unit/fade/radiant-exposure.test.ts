import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convertExposure, convertExposureResult, exposureUnits } from '../../../shared-lib/fade/radiant-exposure.ts';

describe('convertExposure', () => {
  it.each([
    [48, 'h', 'kJ/m²', 42, 7257.6],
    [1000, 'h', 'MJ/m²', 60, 216],
    [216, 'MJ/m²', 'h', 60, 1000],
    [1500, 'kJ/m²', 'MJ/m²', undefined, 1.5],
    [1.5, 'MJ/m²', 'kJ/m²', undefined, 1500],
  ] as const)('%f %s in %s', (value, from, to, irradiance, expected) => {
    expect(convertExposure(value, from, to, irradiance)).toBeCloseTo(expected, 9);
  });

  it('cannot turn hours into a dose without the irradiance', () => {
    expect(convertExposure(1, 'h', 'kJ/m²', undefined)).toBeNull();
    expect(convertExposure(1, 'MJ/m²', 'h', undefined)).toBeNull();
  });

  it('comes back to where it began', () => {
    const unit = fc.constantFrom(...exposureUnits);
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), unit, unit, fc.double({ min: 0.1, max: 1000, noNaN: true }), (value, from, to, irradiance) => {
        const there = convertExposure(value, from, to, irradiance)!;
        expect(convertExposure(there, to, from, irradiance)! / value).toBeCloseTo(1, 12);
      }),
    );
  });

  it('keeps the bound and the open side of a result', () => {
    const bound = { value: 48, unit: 'h', low: null, high: null, level: null, n: 3, bound: 'at-least' as const };
    expect(convertExposureResult(bound, 'h', 'kJ/m²', 42)).toEqual({ ...bound, value: expect.closeTo(7257.6, 9), unit: 'kJ/m²' });
  });
});
