import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { mostBands } from './spectral-grid.ts';

export const scaleSchema = z.enum(['fraction', 'percent']).optional();
export type ReflectanceScale = z.output<typeof scaleSchema>;

/** One spectrum as read, on either scale. */
export const spectrumSchema = z.array(z.number().min(-1).max(400)).min(1).max(mostBands);

/** Above this a fraction is no reflectance at all, fluorescent or not. */
export const highestFraction = 2;
/** A reading below zero by no more than this is an instrument's zero. */
export const zeroError = 0.01;

/** Reflectances brought to 0–1, with what there is to say of them. */
export interface ReadReflectance {
  fractions: number[][];
  flags: Flag[];
  notes: string[];
}

/**
 * Brings spectra that were measured together to the scale 0–1. Without a stated scale, all up to 1 are fractions, a
 * reading above 2 shows percent; between the two it cannot be told and is asked.
 * @param field name of the spectra in the input; the field of a refusal.
 * @throws InputError when the scale cannot be told, or for reflectance below −1 % or above 200 %.
 */
export function readReflectance(spectra: readonly (readonly number[])[], scale: ReflectanceScale, field: string): ReadReflectance {
  const { highest } = endsOf(spectra);
  if (scale === undefined && highest > 1 && highest <= highestFraction) {
    throw new InputError('scale', null, `The highest reflectance is ${highest}, which could be ${highest} % of a black or ${(100 * highest).toFixed(0)} % of a fluorescent print; state scale as 'percent' or 'fraction'.`);
  }
  const percent = scale === undefined ? highest > highestFraction : scale === 'percent';
  const fractions = spectra.map((spectrum) => spectrum.map((value) => (percent ? value / 100 : value)));
  refuseImpossible(fractions, spectra, field);
  return { fractions, flags: flagsOf(fractions, field), notes: scale === undefined ? [`Reflectance was read as ${percent ? 'percent' : 'fractions, 0–1'}.`] : [] };
}

function refuseImpossible(fractions: number[][], spectra: readonly (readonly number[])[], field: string): void {
  fractions.forEach((spectrum, row) => {
    const band = spectrum.findIndex((value) => value < -zeroError || value > highestFraction);
    if (band === -1) return;
    const where = spectra.length === 1 ? `${field}[${band}]` : `${field}[${row}][${band}]`;
    const value = spectra[row]![band]!;
    throw new InputError(where, value, `${field} must lie between 0 and 100 %, with fluorescence up to ${100 * highestFraction} %; this is ${(100 * spectrum[band]!).toFixed(1)} %. Check the reading and scale.`);
  });
}

function flagsOf(fractions: number[][], field: string): Flag[] {
  const { lowest, highest } = endsOf(fractions);
  const flags: Flag[] = [];
  if (highest > 1) {
    flags.push({ code: 'fluorescence', where: field, text: `Reflectance reaches ${(100 * highest).toFixed(1)} %: the print or film fluoresces, or the white was not calibrated. The colour then holds only for a lamp with the same UV share.` });
  }
  if (lowest < 0) {
    flags.push({ code: 'below-zero', where: field, text: `Reflectance falls to ${(100 * lowest).toFixed(2)} %: calibrate the instrument's zero.` });
  }
  return flags;
}

/** One after the other: all readings of a sheet are more than a call takes arguments. */
function endsOf(spectra: readonly (readonly number[])[]): { lowest: number; highest: number } {
  let [lowest, highest] = [Infinity, -Infinity];
  for (const spectrum of spectra) {
    for (const value of spectrum) {
      if (value < lowest) lowest = value;
      if (value > highest) highest = value;
    }
  }
  return { lowest, highest };
}
