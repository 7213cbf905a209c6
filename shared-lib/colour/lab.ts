import { z } from 'zod';

/** CIELAB coordinates [L*, a*, b*]; the white point is the reader's to state, both colours of a pair under the same. */
export type Lab = readonly [number, number, number];

/** Schema of CIELAB coordinates: wide enough for fluorescent and saturated colours, narrow enough to catch slips. */
export const labSchema = z.tuple([
  z.number().min(0).max(150),
  z.number().min(-300).max(300),
  z.number().min(-300).max(300),
]);

/** Chroma C*ab. */
export function chroma(a: number, b: number): number {
  return Math.sqrt(a * a + b * b);
}

/** Hue angle h_ab in degrees, 0 ≤ h < 360; 0 for a neutral colour, whose hue is undefined. */
export function hueDeg(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}
