import { adapted } from './chromatic-adaptation.ts';
import type { Lab } from './lab.ts';
import { xyzFromLab, type Xyz } from './xyz.ts';

/** White of the screen, D65 for the 2° observer (IEC 61966-2-1). */
const screenWhite: Xyz = [95.047, 100, 108.883];

/** X, Y, Z on the scale 0–1 to linear red, green, blue. Source: IEC 61966-2-1, with the seven digits of its amendment 1. */
const toLinear = [
  [3.2406255, -1.5372080, -0.4986286],
  [-0.9689307, 1.8757561, 0.0415175],
  [0.0557101, -0.2040211, 1.0569959],
] as const;

/** Beyond 0–1 by no more than this is rounding. */
const rounding = 1e-3;

export interface ScreenColour {
  /** Red, green, blue 0–1, cut off at the ends. */
  rgb: readonly [number, number, number];
  /** #rrggbb */
  hex: string;
  /** Lies beyond what an sRGB screen shows. */
  outOfGamut: boolean;
}

/**
 * A colour as an sRGB screen shows it: adapted from its own white to the screen's (`adapted`), then by IEC 61966-2-1.
 * @param white of the light and observer that `lab` holds for
 */
export function screenColour(lab: Lab, white: Xyz): ScreenColour {
  const xyz = adapted(xyzFromLab(lab, white), white, screenWhite);
  const linear = toLinear.map(([x, y, z]) => (x * xyz[0] + y * xyz[1] + z * xyz[2]) / 100);
  const encoded = linear.map(encode);
  const rgb = encoded.map((value) => Math.min(1, Math.max(0, value))) as [number, number, number];
  return {
    rgb,
    hex: `#${rgb.map((value) => Math.round(255 * value).toString(16).padStart(2, '0')).join('')}`,
    outOfGamut: encoded.some((value) => value < -rounding || value > 1 + rounding),
  };
}

/** The transfer function of IEC 61966-2-1. */
function encode(value: number): number {
  return value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055;
}
