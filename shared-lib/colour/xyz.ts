import { z } from 'zod';
import type { Lab } from './lab.ts';

/** Tristimulus values [X, Y, Z], Y = 100 for the perfect diffuser. */
export type Xyz = readonly [number, number, number];

const value = z.number().min(0).max(300);

/** Schema of tristimulus values on the scale of 100. */
export const xyzSchema = z.tuple([value, value, value]);

/** (6/29)³: below, the cube root is replaced by a straight line. */
const knee = 216 / 24389;
const slope = 841 / 108;

/** The function f of CIELAB (ISO/CIE 11664-4) of a ratio to the white point. */
export function labFunction(ratio: number): number {
  return ratio > knee ? Math.cbrt(ratio) : slope * ratio + 4 / 29;
}

/** CIELAB from tristimulus values and the white point (ISO/CIE 11664-4). */
export function labFromXyz(xyz: Xyz, white: Xyz): Lab {
  const fx = labFunction(xyz[0] / white[0]);
  const fy = labFunction(xyz[1] / white[1]);
  const fz = labFunction(xyz[2] / white[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** Tristimulus values from CIELAB and the white point; negative for coordinates of no real colour. */
export function xyzFromLab([L, a, b]: Lab, [Xn, Yn, Zn]: Xyz): Xyz {
  const fy = (L + 16) / 116;
  const back = (f: number) => (f > 6 / 29 ? f * f * f : (f - 4 / 29) / slope);
  return [Xn * back(fy + a / 500), Yn * back(fy), Zn * back(fy - b / 200)];
}
