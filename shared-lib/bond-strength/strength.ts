import { convertStrength, type StrengthUnit } from '../quantity/units.ts';

/** Units a peel or bond strength can be asked in. */
export const STRENGTH_UNITS = ['N/15 mm', 'N/25 mm', 'N/25.4 mm', 'N/m', 'gf/25 mm', 'gf/in', 'lbf/in'] as const satisfies readonly StrengthUnit[];

/** A force on a strip of `widthMm` as a strength in `unit`. */
export function strengthOf(forceN: number, widthMm: number, unit: StrengthUnit): number {
  return convertStrength((15 * forceN) / widthMm, 'N/15 mm', unit);
}
