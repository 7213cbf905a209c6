import { spectralPower, type Illuminant } from './illuminants.ts';
import { lagrangeStencil } from './lagrange.ts';
import { colourMatching, tabulated, type Observer, type Triple } from './observers.ts';
import type { SpectralGrid } from './spectral-grid.ts';
import { spreadWeights } from './spread-weights.ts';
import { tableGrid, weightingTables } from './weighting-tables.ts';
import type { Xyz } from './xyz.ts';

/** Weights that turn reflectance (0–1) into X, Y, Z, and the white point: what a perfect diffuser would give. */
export interface ObserverWeights extends Triple {
  white: Xyz;
}

/**
 * Weights of an observer under an illuminant for reflectance on a grid.
 * - 10 and 20 nm: tables by ASTM E2022 for A, D50 and D65; for F2 and F11, whose lines such tables blur, the 5 nm products.
 * - 5 nm: the products of CIE 015 summed. Finer: products at every nanometre; F2 and F11 stay at 5 nm.
 * Weights beyond the ends of the grid go to its first and last reading (ASTM E308, 7.3.2.2).
 */
export function observerWeights(grid: SpectralGrid, illuminant: Illuminant, observer: Observer): ObserverWeights {
  const { fine, from } = fineWeights(grid.stepNm, illuminant, observer);
  const spread = { x: spreadWeights(fine.x, from, grid), y: spreadWeights(fine.y, from, grid), z: spreadWeights(fine.z, from, grid) };
  return { ...spread, white: [sum(spread.x), sum(spread.y), sum(spread.z)] };
}

function fineWeights(stepNm: number, illuminant: Illuminant, observer: Observer): { fine: Triple; from: SpectralGrid } {
  const lines = illuminant === 'F2' || illuminant === 'F11';
  if (stepNm >= 10 && !lines) return { fine: toHundred(weightingTables[illuminant][observer]), from: tableGrid };
  const from = stepNm >= 5 || lines ? tabulated : { startNm: 380, stepNm: 1, count: 401 };
  return { fine: products(from, illuminant, observer), from };
}

/** Power times colour-matching function. */
function products(grid: SpectralGrid, illuminant: Illuminant, observer: Observer): Triple {
  const power = resampled(spectralPower[illuminant], grid, true);
  const { x, y, z } = colourMatching[observer];
  const times = (functions: Float64Array) => resampled(functions, grid, false).map((value, index) => value * power[index]!);
  return toHundred({ x: times(x), y: times(y), z: times(z) });
}

/** Scaled so that the perfect diffuser has Y = 100. */
function toHundred({ x, y, z }: Triple): Triple {
  const scale = 100 / sum(y);
  const scaled = (values: Float64Array) => values.map((value) => value * scale);
  return { x: scaled(x), y: scaled(y), z: scaled(z) };
}

/** The tabulated values at the places of a grid: illuminants linearly, as CIE 015 says of the D series, else cubically. */
function resampled(values: Float64Array, grid: SpectralGrid, linear: boolean): Float64Array {
  return Float64Array.from({ length: grid.count }, (_, index) => {
    const position = (grid.startNm + index * grid.stepNm - tabulated.startNm) / tabulated.stepNm;
    if (linear) {
      const below = Math.min(Math.floor(position), tabulated.count - 2);
      return values[below]! + (position - below) * (values[below + 1]! - values[below]!);
    }
    const { first, coefficients } = lagrangeStencil(position, tabulated.count);
    return coefficients.reduce((total, coefficient, point) => total + coefficient * values[first + point]!, 0);
  });
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}
