import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import { measurementGeometries } from '../method/reference-colour.ts';
import { illuminantNames } from './illuminants.ts';
import { observerDegrees } from './observers.ts';

/** What a colour was computed and measured under; `condition` is the instrument's light by ISO 13655 (M1 holds the UV of D50). */
export const measurementLightSchema = z.strictObject({
  illuminant: z.enum([...illuminantNames, 'C']),
  observer: z.literal(observerDegrees),
  condition: z.enum(['M0', 'M1', 'M2', 'M3']).optional(),
  /** Of the instrument, as far as stated. */
  geometry: z.enum(measurementGeometries).optional(),
});
export type MeasurementLight = z.output<typeof measurementLightSchema>;

/** A light in words, e.g. 'D50, 2°, M1'. */
export function lightInWords({ illuminant, observer, condition, geometry }: MeasurementLight): string {
  return [illuminant, `${observer}°`, ...(condition === undefined ? [] : [condition]), ...(geometry === undefined ? [] : [geometry])].join(', ');
}

/** Which of a pair are spectra: those can be computed for another illuminant or observer, but were measured as they were. */
export interface SpectralPair {
  reference: boolean;
  sample: boolean;
}

/**
 * Holds a sample to its reference's light, as far as both are stated.
 * @throws InputError with what to do when they differ.
 */
export function holdToOneLight(reference: MeasurementLight | undefined, sample: MeasurementLight | undefined, spectral: SpectralPair = { reference: false, sample: false }): void {
  if (!reference || !sample) return;
  const measuredOtherwise = differs(reference.condition, sample.condition) || differs(reference.geometry, sample.geometry);
  const computedOtherwise = !spectral.reference && (reference.illuminant !== sample.illuminant || reference.observer !== sample.observer);
  if (!measuredOtherwise && !computedOtherwise) return;
  const remedy = measuredOtherwise
    ? "Measure the sample under the reference's light and geometry; no computation makes up for it."
    : spectral.sample
      ? `Set this sheet to ${reference.illuminant} and ${reference.observer}°: the sample’s spectra are then computed for them.`
      : "Measure the sample under the reference's light, or compute both from their spectra.";
  throw new InputError(
    'sampleLight',
    lightInWords(sample),
    `The reference stands under ${lightInWords(reference)} and the sample under ${lightInWords(sample)}: their difference would be that of the ${measuredOtherwise ? 'measurements' : 'lights'}. ${remedy}`,
  );
}

function differs<Value>(one: Value | undefined, other: Value | undefined): boolean {
  return one !== undefined && other !== undefined && one !== other;
}
