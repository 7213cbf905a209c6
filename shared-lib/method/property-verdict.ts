import { z } from 'zod';
import type { Limit } from './method.ts';

/** Schema of a limit as it is stored and sent. */
export const limitSchema = z.strictObject({
  property: z.string().max(100),
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  source: z.string().max(200),
}) satisfies z.ZodType<Limit>;

/** How the interval counts: `simple` looks at the value alone, `guarded` asks the whole interval to lie inside. */
export const verdictRuleSchema = z.enum(['simple', 'guarded']);

const verdictWordSchema = z.enum(['meets', 'falls short', 'undecided', 'no limit']);

export const propertyVerdictSchema = z.strictObject({
  property: z.string(),
  limit: limitSchema.nullable(),
  verdict: verdictWordSchema,
  /** Probability that the property conforms, 0–1, or `null` where it cannot be given. */
  probability: z.number().min(0).max(1).nullable(),
  /** The measurement study of the method that the verdict took into account, in words; absent where there was none. */
  study: z.string().max(400).optional(),
  /** The value was read of the specimens themselves and decided as it stands, whatever the rule. */
  asRead: z.literal(true).optional(),
});

export type VerdictRule = z.output<typeof verdictRuleSchema>;
export type VerdictWord = z.output<typeof verdictWordSchema>;
export type PropertyVerdict = z.output<typeof propertyVerdictSchema>;
