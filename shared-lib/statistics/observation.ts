import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import type { Censored } from './censored-normal.ts';

/** A reading as calculations take it: a number, or what is known of it, `{atLeast}`, `{atMost}` or `{low, high}`. */
export const observationSchema = z.union([
  z.number(),
  z.strictObject({ atLeast: z.number() }),
  z.strictObject({ atMost: z.number() }),
  z.strictObject({ low: z.number(), high: z.number() }),
]);

export type Observation = z.output<typeof observationSchema>;

/** @throws InputError naming `field` for a low above its high */
export function readObservation(value: Observation, field: string): Censored {
  if (typeof value === 'number') return { low: value, high: value };
  if ('atLeast' in value) return { low: value.atLeast, high: null };
  if ('atMost' in value) return { low: null, high: value.atMost };
  if (value.low > value.high) throw new InputError(field, value, `${field} has low ${value.low} above high ${value.high}.`);
  return value;
}
