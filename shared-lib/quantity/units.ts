/** Units of force, length, strength, dose and exposure. Every factor is exact: g0, the inch and the pound-force are defined. */

export type ForceUnit = 'N' | 'mN' | 'kN' | 'gf' | 'kgf' | 'lbf';
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in';
export type StrengthUnit = 'N/15 mm' | 'N/25 mm' | 'N/25.4 mm' | 'N/m' | 'gf/25 mm' | 'gf/in' | 'lbf/in';
export type DoseUnit = 'W·min/m²' | 'W·min/ft²' | 'kJ/m²';

/** Standard acceleration of free fall, m/s² (ISO 80000-3). */
export const STANDARD_GRAVITY = 9.80665;

/** Newtons in one of the unit. */
export const newtonsPer: Record<ForceUnit, number> = {
  N: 1,
  mN: 0.001,
  kN: 1000,
  gf: STANDARD_GRAVITY / 1000,
  kgf: STANDARD_GRAVITY,
  lbf: 4.4482216152605,
};

/** Millimetres in one of the unit. */
export const millimetresPer: Record<LengthUnit, number> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

/** A strength is a force per width of strip: newtons over millimetres for one of the unit. */
const strength: Record<StrengthUnit, { newtons: number; millimetres: number }> = {
  'N/15 mm': { newtons: 1, millimetres: 15 },
  'N/25 mm': { newtons: 1, millimetres: 25 },
  'N/25.4 mm': { newtons: 1, millimetres: 25.4 },
  'N/m': { newtons: 1, millimetres: 1000 },
  'gf/25 mm': { newtons: newtonsPer.gf, millimetres: 25 },
  'gf/in': { newtons: newtonsPer.gf, millimetres: 25.4 },
  'lbf/in': { newtons: newtonsPer.lbf, millimetres: 25.4 },
};

/** A peel, bond or tensile strength in another unit. Mind that 25 mm and one inch differ by 1.6 %. */
export function convertStrength(value: number, from: StrengthUnit, to: StrengthUnit): number {
  if (from === to) return value;
  const source = strength[from];
  const target = strength[to];
  return (value * source.newtons * target.millimetres) / (source.millimetres * target.newtons);
}

/** Square metres in one square foot (0.3048 m squared). */
const SQUARE_METRES_PER_SQUARE_FOOT = 0.09290304;

/** W·min/m² in one of the unit: the corona treatment dose. 1 W·min = 60 J. */
const wattMinutesPerSquareMetrePer: Record<DoseUnit, number> = {
  'W·min/m²': 1,
  'W·min/ft²': 1 / SQUARE_METRES_PER_SQUARE_FOOT,
  'kJ/m²': 1000 / 60,
};

/** A corona treatment dose in another unit. */
export function convertDose(value: number, from: DoseUnit, to: DoseUnit): number {
  if (from === to) return value;
  return (value * wattMinutesPerSquareMetrePer[from]) / wattMinutesPerSquareMetrePer[to];
}

/** Radiant exposure in kJ/m² after `hours` under a constant irradiance in W/m². */
export function kilojoulesPerSquareMetre(irradianceWPerM2: number, hours: number): number {
  return irradianceWPerM2 * hours * 3.6;
}

/** Hours under a constant irradiance in W/m² that give a radiant exposure in kJ/m². */
export function hoursOfExposure(exposureKJPerM2: number, irradianceWPerM2: number): number {
  return exposureKJPerM2 / (irradianceWPerM2 * 3.6);
}
