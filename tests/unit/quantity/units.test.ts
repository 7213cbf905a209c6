import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convertDose,
  convertStrength,
  hoursOfExposure,
  kilojoulesPerSquareMetre,
  millimetresPer,
  newtonsPer,
} from '../../../shared-lib/quantity/units.ts';
import type { StrengthUnit } from '../../../shared-lib/quantity/units.ts';

const units: StrengthUnit[] = ['N/m', 'N/15 mm', 'N/25 mm', 'N/25.4 mm', 'gf/25 mm', 'gf/in', 'lbf/in'];

describe('strength units', () => {
  // Worked from the exact definitions g0 = 9.80665 m/s², 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N; nine digits printed.
  it.each<[StrengthUnit, number[]]>([
    ['N/15 mm', [66.6666667, 1, 1.66666667, 1.69333333, 169.952702, 172.671945, 0.380676477]],
    ['N/25 mm', [40, 0.6, 1, 1.016, 101.971621, 103.603167, 0.228405886]],
    ['lbf/in', [175.126835, 2.62690253, 4.37817088, 4.44822162, 446.449183, 453.59237, 1]],
    ['gf/25 mm', [0.392266, 0.00588399, 0.00980665, 0.009963556, 1, 1.016, 0.00223989658]],
    ['gf/in', [0.386088583, 0.00579132874, 0.00965221457, 0.00980665, 0.984251969, 1, 0.00220462262]],
  ])('1 %s', (from, expected) => {
    units.forEach((to, i) => expect(convertStrength(1, from, to) / expected[i]!).toBeCloseTo(1, 7));
  });

  it('keeps per inch and per 25 mm apart (1.6 %)', () => {
    expect(convertStrength(200, 'gf/25 mm', 'N/15 mm')).toBeCloseTo(1.176798, 6);
    expect(convertStrength(350, 'gf/in', 'N/15 mm')).toBeCloseTo(2.026965, 6);
  });

  it('comes back to the value by any detour', () => {
    const unit = fc.constantFrom(...units);
    fc.assert(fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), unit, unit, (value, from, to) => {
      expect(convertStrength(convertStrength(value, from, to), to, from) / value).toBeCloseTo(1, 12);
    }));
  });
});

describe('force, length, dose and exposure', () => {
  it('uses the defined factors (ISO 80000, international yard and pound 1959)', () => {
    expect(newtonsPer.kgf).toBe(9.80665);
    expect(newtonsPer.lbf / newtonsPer.gf).toBeCloseTo(453.59237, 10);
    expect(millimetresPer.in).toBe(25.4);
  });

  it('converts corona doses: 5000 W over 1.5 m at 150 m/min is 22.222 W·min/m²', () => {
    const dose = 5000 / (1.5 * 150);
    expect(convertDose(dose, 'W·min/m²', 'W·min/ft²')).toBeCloseTo(2.0645, 4);
    expect(convertDose(1, 'W·min/ft²', 'W·min/m²')).toBeCloseTo(10.7639104, 7);
    expect(convertDose(1, 'W·min/m²', 'kJ/m²')).toBeCloseTo(0.06, 15);
    // Surf. Coat. Technol. 234 (2013) 67: BOPP treated with 15.3, 38.2 and 76.4 kJ/m².
    expect(convertDose(15.3, 'kJ/m²', 'W·min/m²')).toBeCloseTo(255, 6);
  });

  it('turns hours under a lamp into radiant exposure and back', () => {
    expect(kilojoulesPerSquareMetre(50, 100)).toBe(18000);
    expect(hoursOfExposure(kilojoulesPerSquareMetre(42, 7), 42)).toBeCloseTo(7, 12);
  });
});
