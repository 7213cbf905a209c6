import { labFunction, type Xyz } from './xyz.ts';

/**
 * Spot colour tone value, 0–1, of a tint between paper and solid: the way through f(X), f(Y), f(Z) that the tint has gone.
 * Source: ISO 20654 (from memory).
 */
export function spotToneValue(paper: Xyz, solid: Xyz, tint: Xyz, white: Xyz): number {
  const way = (to: Xyz) => Math.hypot(...to.map((value, index) => labFunction(value / white[index]!) - labFunction(paper[index]! / white[index]!)));
  return way(tint) / way(solid);
}
