import type { SpectrumFrame } from '../../shared-lib/colour/spectrum-from-numbers.ts';

/** A spectrum as a file holds it, before it is held to its wavelengths and its scale is known. */
export interface FoundSpectrum {
  name: string;
  values: number[];
  frame: SpectrumFrame;
}

/** '400', 'R400', '400 nm', 'SPECTRAL_NM400', 'nm_400' → 400; `null` for what names no wavelength. */
export function wavelengthIn(text: string): number | null {
  const [, digits] = /^(?:spectral_?(?:nm)?_?|spec_?|nm_?|r_?|λ)?\s*(\d{3,4}(?:[.,]\d+)?)\s*(?:nm)?$/i.exec(text.trim()) ?? [];
  const value = digits === undefined ? Number.NaN : Number(digits.replace(',', '.'));
  return value >= 200 && value <= 1100 ? value : null;
}
