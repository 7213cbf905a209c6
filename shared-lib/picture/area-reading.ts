import { z } from 'zod';

const whole = z.number().int().min(0).max(20_000);

/**
 * The part of a picture that counts, in its pixels from the top left. A polygon's corners lie between pixels: a pixel
 * belongs to it when its middle does; where its sides cross, parts enclosed twice are outside.
 */
export const regionSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('rectangle'), x: whole, y: whole, width: whole.min(1), height: whole.min(1) }),
  z.strictObject({ kind: z.literal('polygon'), points: z.array(z.tuple([whole, whole])).min(3).max(100) }),
]);

/** How a removed area is read from a picture: all that is needed to read it again. */
export const areaReadingSchema = z.strictObject({
  region: regionSchema,
  /** What was removed looks lighter or darker than the print that stayed. */
  removed: z.enum(['lighter', 'darker']),
  /** Pixels beyond this grey are counted as removed. */
  threshold: z.number().min(0).max(255),
  /** Uneven light is taken out by a surface fitted to the print that stayed, to the bare places or to both; 'as-is': not at all. */
  light: z.enum(['as-is', 'print', 'bare', 'both']).default('as-is'),
  /** Grain is taken out by the median of each pixel and its eight neighbours. */
  smooth: z.boolean().default(false),
});

export type Region = z.output<typeof regionSchema>;
export type AreaReading = z.output<typeof areaReadingSchema>;
