import type { ResultValue } from '../calculation/result.ts';
import { scaleResult } from '../calculation/scale-result.ts';
import { hoursOfExposure, kilojoulesPerSquareMetre } from '../quantity/units.ts';

/** Days are those of the calendar, for prints outdoors or in a window. */
export const exposureUnits = ['h', 'd', 'kJ/m²', 'MJ/m²'] as const;

const HOURS_PER_DAY = 24;

export type ExposureUnit = (typeof exposureUnits)[number];

/**
 * An exposure in another unit: H = E·t, 1 W/m² for 1 h = 3.6 kJ/m².
 * @param irradianceWPerM2 needed between hours and a radiant exposure; both hold for the same band of wavelengths.
 * @returns `null` when the irradiance is needed and not given.
 */
export function convertExposure(value: number, from: ExposureUnit, to: ExposureUnit, irradianceWPerM2: number | undefined): number | null {
  if (from === to) return value;
  if (from === 'd') return convertExposure(value * HOURS_PER_DAY, 'h', to, irradianceWPerM2);
  if (to === 'd') {
    const hours = convertExposure(value, from, 'h', irradianceWPerM2);
    return hours === null ? null : hours / HOURS_PER_DAY;
  }
  if (from === 'h' || to === 'h') {
    if (irradianceWPerM2 === undefined) return null;
    if (from === 'h') {
      const kilojoules = kilojoulesPerSquareMetre(irradianceWPerM2, value);
      return to === 'MJ/m²' ? kilojoules / 1000 : kilojoules;
    }
    return hoursOfExposure(from === 'MJ/m²' ? value * 1000 : value, irradianceWPerM2);
  }
  return from === 'MJ/m²' ? value * 1000 : value / 1000;
}

/** A result that is an exposure, in another unit; `null` as in `convertExposure`. */
export function convertExposureResult(result: ResultValue, from: ExposureUnit, to: ExposureUnit, irradianceWPerM2: number | undefined): ResultValue | null {
  const factor = convertExposure(1, from, to, irradianceWPerM2);
  return factor === null ? null : scaleResult(result, factor, to);
}
