import { absorbedShare } from './absorbed-share.ts';

/**
 * Effective dot area of a tint, 0–1, from densities minus paper (Murray & Davies 1936; ISO 12647-1).
 * @param n Yule–Nielsen factor for light that spreads in the substrate: every density is divided by it; 1 is Murray–Davies.
 */
export function dotArea(solid: number, tint: number, n = 1): number {
  return absorbedShare(tint / n) / absorbedShare(solid / n);
}
