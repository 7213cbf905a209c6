import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import { illuminantNames } from './illuminants.ts';
import { observerDegrees } from './observers.ts';

/** What a colour was computed and measured under; `condition` is the instrument's light by ISO 13655 (M1 holds the UV of D50). */
export const measurementLightSchema = z.strictObject({
  illuminant: z.enum([...illuminantNames, 'C']),
  observer: z.literal(observerDegrees),
  condition: z.enum(['M0', 'M1', 'M2', 'M3']).optional(),
});
export type MeasurementLight = z.output<typeof measurementLightSchema>;

/** A light in words, e.g. 'D50, 2°, M1'. */
export function lightInWords({ illuminant, observer, condition }: MeasurementLight): string {
  return [illuminant, `${observer}°`, ...(condition === undefined ? [] : [condition])].join(', ');
}

/**
 * Holds a sample to its reference's light, as far as both are stated.
 * @throws InputError with what to do when they differ.
 */
export function holdToOneLight(reference: MeasurementLight | undefined, sample: MeasurementLight | undefined): void {
  if (!reference || !sample) return;
  const conditionsDiffer = reference.condition !== undefined && sample.condition !== undefined && reference.condition !== sample.condition;
  if (reference.illuminant === sample.illuminant && reference.observer === sample.observer && !conditionsDiffer) return;
  throw new InputError(
    'sampleLight',
    lightInWords(sample),
    `The reference stands under ${lightInWords(reference)} and the sample under ${lightInWords(sample)}: their difference would be that of the lights. Measure the sample under the reference's light, or compute both from their spectra.`,
  );
}
