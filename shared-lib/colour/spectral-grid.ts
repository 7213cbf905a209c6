import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';

/** Equal steps of wavelength. */
export interface SpectralGrid {
  startNm: number;
  stepNm: number;
  count: number;
}

/** As many as from 200 to 1100 nm by half a nanometre. */
export const mostBands = 1801;
/** Beyond, no reflectance of a print is measured. */
const bounds = { fromNm: 200, toNm: 1100 };
export const wavelengthsSchema = z.array(z.number().min(bounds.fromNm).max(bounds.toNm)).min(2).max(mostBands);

/** Longest first and shortest last wavelength that an evaluation can stand on. */
const reach = { fromNm: 400, toNm: 700 };
const sameNm = 1e-6;

/**
 * The grid of a list of wavelengths. Steps of 20 and 10 nm lie on whole tens, others are 5 nm or finer.
 * @throws InputError for fewer than two wavelengths or more than 1801, wavelengths that descend, repeat,
 *   leave a gap, lie beyond 200 to 1100 nm, or do not reach from 400 to 700 nm.
 */
export function gridOf(wavelengthsNm: readonly number[], field = 'wavelengthsNm'): SpectralGrid {
  const count = wavelengthsNm.length;
  if (count < 2 || count > mostBands) throw new InputError(field, count, `${field} must be 2 to ${mostBands}, not ${count}.`);
  const startNm = wavelengthsNm[0]!;
  const stepNm = (wavelengthsNm[count - 1]! - startNm) / (count - 1);
  const refuse = (value: number, message: string) => new InputError(field, value, message);
  if (stepNm <= 0) throw refuse(startNm, `${field} must ascend; this list runs from ${startNm} to ${wavelengthsNm[count - 1]} nm. Turn it round together with its readings.`);
  const beyond = wavelengthsNm.find((wavelength) => wavelength < bounds.fromNm || wavelength > bounds.toNm);
  if (beyond !== undefined) throw refuse(beyond, `${field} must lie between ${bounds.fromNm} and ${bounds.toNm} nm, not at ${beyond} nm.`);
  const usual = wavelengthsNm[1]! - startNm;
  wavelengthsNm.forEach((wavelength, index) => {
    if (index > 0 && Math.abs(wavelength - wavelengthsNm[index - 1]! - usual) > sameNm) {
      throw new InputError(`${field}[${index}]`, wavelength, `${field} must go on in equal steps; it steps by ${usual} nm at first, but from ${wavelengthsNm[index - 1]} to ${wavelength} nm here.`);
    }
  });
  const onTens = Math.abs(startNm / 10 - Math.round(startNm / 10)) < sameNm;
  const step = Math.abs(stepNm - Math.round(stepNm)) < sameNm ? Math.round(stepNm) : stepNm;
  if (!((step === 20 || step === 10) && onTens) && step > 5) {
    throw refuse(step, `${field} must step by 20 or 10 nm on whole tens, or by 5 nm or less, not by ${step} nm from ${startNm} nm.`);
  }
  if (startNm > reach.fromNm || startNm + (count - 1) * step < reach.toNm) {
    throw refuse(startNm, `${field} must reach from ${reach.fromNm} to ${reach.toNm} nm at least, not from ${startNm} to ${wavelengthsNm[count - 1]} nm.`);
  }
  return { startNm, stepNm: step, count };
}

/** The wavelengths of a grid. */
export function wavelengthsOf({ startNm, stepNm, count }: SpectralGrid): number[] {
  return Array.from({ length: count }, (_, index) => startNm + index * stepNm);
}
