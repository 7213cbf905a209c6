import type { SpectralGrid } from './spectral-grid.ts';
import { productGrid } from './spectral-products.ts';
import { spreadWeights } from './spread-weights.ts';

/**
 * Reflection density −log10(ΣR·w / Σw) of a spectrum (0–1) through an ISO 5-3 spectral product; `null` where nothing is
 * reflected, whose density has no end. Weights beyond the spectrum's ends go to its first and last reading.
 * Source: ISO 5-3, ISO 5-4 (from memory).
 */
export function spectralDensity(reflectance: readonly number[], grid: SpectralGrid, product: Float64Array): number | null {
  const weights = spreadWeights(product, productGrid, grid);
  let reflected = 0;
  let total = 0;
  weights.forEach((weight, index) => {
    reflected += weight * reflectance[index]!;
    total += weight;
  });
  return reflected > 0 ? -Math.log10(reflected / total) : null;
}
