import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import { bracketFromReadings, type Bracket } from './bracket.ts';

/** Test fluids lie between 22.6 mN/m (methanol) and 72.8 mN/m (water); anything outside is a slip. */
export const tensionMNm = z.number().min(18).max(75);
const placeMm = z.number().min(-100_000).max(100_000);

export const filmPositionSchema = z.strictObject({
  label: z.string().trim().min(1).max(100).optional(),
  acrossMm: placeMm.optional(),
  alongM: z.number().min(0).max(1_000_000).optional(),
  specimen: z.union([z.string().max(100), z.number()]).optional(),
  readings: z
    .array(z.strictObject({ fluidMNm: tensionMNm, heldS: z.number().min(0).max(3600) }))
    .min(1)
    .max(100)
    .optional(),
  wetsMNm: tensionMNm.optional(),
  retractsMNm: tensionMNm.optional(),
});

/** One position on the film with the bracket its fluids gave. */
export interface FilmPosition extends Bracket {
  label: string;
  acrossMm: number | null;
  alongM: number | null;
  specimen: string | number | null;
  /** Its readings contradict each other. */
  contradicts: boolean;
}

/**
 * Turns the input of one position into its bracket.
 * @throws InputError when neither or both of readings and bracket are given, or when the bracket is upside down
 */
export function filmPosition(given: z.output<typeof filmPositionSchema>, index: number, criterionS: number): FilmPosition {
  return {
    label: given.label ?? `Position ${index + 1}`,
    acrossMm: given.acrossMm ?? null,
    alongM: given.alongM ?? null,
    specimen: given.specimen ?? null,
    ...bracketOf(given, `positions[${index}]`, criterionS),
  };
}

function bracketOf(given: z.output<typeof filmPositionSchema>, field: string, criterionS: number) {
  const { readings, wetsMNm, retractsMNm } = given;
  const typed = wetsMNm !== undefined || retractsMNm !== undefined;
  if (readings && typed) {
    throw new InputError(`${field}.readings`, readings, 'Give a position either readings or wetsMNm and retractsMNm, not both.');
  }
  if (readings) return bracketFromReadings(readings, criterionS);
  if (!typed) {
    throw new InputError(
      `${field}.wetsMNm`,
      null,
      'This position has no reading: give the highest fluid that held, the lowest that retracted, or both.',
    );
  }
  if (wetsMNm !== undefined && retractsMNm !== undefined && retractsMNm <= wetsMNm) {
    throw new InputError(
      `${field}.retractsMNm`,
      retractsMNm,
      `The fluid that retracted (${retractsMNm} mN/m) must be higher than the one that held (${wetsMNm} mN/m).`,
    );
  }
  return { low: wetsMNm ?? null, high: retractsMNm ?? null, contradicts: false };
}
