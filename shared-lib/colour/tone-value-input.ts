import { z } from 'zod';
import { parseInput } from '../calculation/calculation.ts';
import { densitySchema } from './density-value.ts';
import { oneOrMore } from './replicates.ts';
import { xyzSchema } from './xyz.ts';

const nominal = z.number().gt(0).max(100);
const common = { nominalPct: nominal.optional(), reportAtPct: nominal.default(50), level: z.number() };
const solidDensity = z.number().gt(0).max(6);

/** Densities: `paper` is subtracted from all, 0 when they were read minus paper. */
const densityForm = z.strictObject({
  ...common,
  solid: oneOrMore(solidDensity),
  paper: z.number().min(0).max(4),
  tint: oneOrMore(densitySchema).optional(),
  patches: z.array(z.strictObject({ nominalPct: nominal, tint: oneOrMore(densitySchema) })).min(1).max(1000).optional(),
  n: z.number().min(1).max(10).optional(),
});

/** Tristimulus values [X, Y, Z] under one light, for spot colours. */
const spotForm = z.strictObject({
  ...common,
  solid: xyzSchema,
  paper: xyzSchema,
  tint: xyzSchema.optional(),
  patches: z.array(z.strictObject({ nominalPct: nominal, tint: xyzSchema })).min(1).max(1000).optional(),
  white: xyzSchema.default([96.42, 100, 82.49]),
});

export type DensityForm = z.output<typeof densityForm>;
export type SpotForm = z.output<typeof spotForm>;

/**
 * Tells the two forms apart: tristimulus values where `paper` is [X, Y, Z], densities where it is one number.
 * @throws InputError naming the field at fault within its form.
 */
export function toneValueForm(given: { paper: unknown }): { spot: SpotForm } | { density: DensityForm } {
  return Array.isArray(given.paper) ? { spot: parseInput(spotForm, given) } : { density: parseInput(densityForm, given) };
}
