import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { scaleResult } from '../calculation/scale-result.ts';
import { convertExposureResult, type ExposureUnit } from './radiant-exposure.ts';

/** Stands beside every service time. */
export const serviceTimeCaution =
  'The service time is an estimate from the radiant exposure alone: it assumes that the same dose does the same harm at any ' +
  'irradiance (reciprocity), temperature, humidity and spectrum. Exposure in the laboratory never equals life outdoors or in a window; do not promise it.';

/**
 * Years until an exposure is collected in use, an estimate.
 * @param yearlyDoseMJPerM2 radiant exposure in a year, in the band of wavelengths of the exposure.
 * @throws InputError when the exposure is in hours and the irradiance is not given.
 */
export function serviceTime(life: ResultValue, unit: ExposureUnit, irradianceWPerM2: number | undefined, yearlyDoseMJPerM2: number): ResultValue {
  const dose = convertExposureResult(life, unit, 'MJ/m²', irradianceWPerM2);
  if (dose === null) {
    throw new InputError('irradianceWPerM2', null, 'A service time from hours needs irradianceWPerM2, in the same band of wavelengths as the yearly dose.');
  }
  return scaleResult(dose, 1 / yearlyDoseMJPerM2, 'years');
}
