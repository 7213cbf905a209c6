import { lagrangeStencil } from './lagrange.ts';
import type { SpectralGrid } from './spectral-grid.ts';

/**
 * Weights for readings on one grid from weights for readings on a finer one: each fine weight goes to the readings that
 * its place would be interpolated from, those beyond the ends to the first or last reading. The sum stays.
 * Source: ASTM E2022 (steps), ASTM E308, 7.3.2.2 (ends).
 */
export function spreadWeights(weights: Float64Array, from: SpectralGrid, to: SpectralGrid): Float64Array {
  const spread = new Float64Array(to.count);
  weights.forEach((weight, index) => {
    const { first, coefficients } = lagrangeStencil((from.startNm + index * from.stepNm - to.startNm) / to.stepNm, to.count);
    coefficients.forEach((coefficient, point) => {
      spread[first + point]! += weight * coefficient;
    });
  });
  return spread;
}
