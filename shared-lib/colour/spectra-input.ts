import { InputError } from '../calculation/input-error.ts';

/**
 * Holds spectra to their wavelengths.
 * @throws InputError naming the first spectrum with missing or extra bands.
 */
export function holdToBands(spectra: readonly (readonly number[])[], bands: number, field: string): void {
  spectra.forEach((spectrum, index) => {
    if (spectrum.length === bands) return;
    const where = spectra.length === 1 ? field : `${field}[${index}]`;
    throw new InputError(where, spectrum.length, `${where} has ${spectrum.length} readings for ${bands} wavelengths; ${spectrum.length < bands ? 'some are missing' : 'there are too many'}.`);
  });
}
