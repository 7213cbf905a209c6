import { z } from 'zod';
import { mostBands, wavelengthsOf, wavelengthsSchema, type SpectralGrid } from './spectral-grid.ts';

/** A reflectance spectrum as it was read, on equal steps of wavelength. */
export interface Spectrum extends SpectralGrid {
  scale: 'percent' | 'fraction';
  /** One for each wavelength, on that scale. */
  values: number[];
}

/** A spectrum as a calculation takes it: its wavelengths, its reflectance and the scale. */
export const spectrumInputSchema = z.strictObject({
  wavelengthsNm: wavelengthsSchema,
  reflectance: z.array(z.number().min(-1).max(400)).min(2).max(mostBands),
  scale: z.enum(['fraction', 'percent']),
});
export type SpectrumInput = z.output<typeof spectrumInputSchema>;

/** The same as input of a calculation. */
export function asSpectrumInput(spectrum: Spectrum): SpectrumInput {
  return { wavelengthsNm: wavelengthsOf(spectrum), reflectance: spectrum.values, scale: spectrum.scale };
}

/** Reflectances 0–1. */
export function fractionsOf({ scale, values }: Pick<Spectrum, 'scale' | 'values'>): number[] {
  return scale === 'percent' ? values.map((value) => value / 100) : [...values];
}
