import type { ObserverWeights } from './observer-weights.ts';
import type { Xyz } from './xyz.ts';

/** X, Y, Z of a reflectance (0–1) on the grid that the weights were made for. */
export function xyzFromSpectrum({ x, y, z }: ObserverWeights, reflectance: ArrayLike<number>): Xyz {
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let index = 0; index < x.length; index += 1) {
    const value = reflectance[index]!;
    X += value * x[index]!;
    Y += value * y[index]!;
    Z += value * z[index]!;
  }
  return [X, Y, Z];
}
