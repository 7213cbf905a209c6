import { InputError } from '../calculation/input-error.ts';
import { lagrangeStencil } from './lagrange.ts';
import type { SpectralGrid } from './spectral-grid.ts';

/** Reflectances 0–1 on a grid. */
export interface GridCurve {
  grid: SpectralGrid;
  values: readonly number[];
}

/**
 * The grid that all curves can be held against: where all of them reach, by the widest step among them. Curves on it already
 * are taken as they are, others interpolated (`lagrangeStencil`).
 * @throws InputError when there is no stretch that all of them cover.
 */
export function onCommonGrid(curves: readonly GridCurve[]): { grid: SpectralGrid; curves: number[][] } {
  const [first] = curves;
  if (curves.every(({ grid }) => grid.startNm === first!.grid.startNm && grid.stepNm === first!.grid.stepNm && grid.count === first!.grid.count)) {
    return { grid: first!.grid, curves: curves.map(({ values }) => [...values]) };
  }
  const stepNm = Math.max(...curves.map(({ grid }) => grid.stepNm));
  const startNm = Math.ceil(Math.max(...curves.map(({ grid }) => grid.startNm)) / stepNm) * stepNm;
  const endNm = Math.floor(Math.min(...curves.map(({ grid }) => grid.startNm + (grid.count - 1) * grid.stepNm)) / stepNm) * stepNm;
  const count = Math.round((endNm - startNm) / stepNm) + 1;
  if (count < 2) throw new InputError('sample', null, 'The spectra have no stretch of wavelengths in common.');
  const grid = { startNm, stepNm, count };
  return { grid, curves: curves.map((curve) => resampled(curve, grid)) };
}

function resampled({ grid, values }: GridCurve, to: SpectralGrid): number[] {
  return Array.from({ length: to.count }, (_, index) => {
    const { first, coefficients } = lagrangeStencil((to.startNm + index * to.stepNm - grid.startNm) / grid.stepNm, grid.count);
    return coefficients.reduce((total, coefficient, point) => total + coefficient * values[first + point]!, 0);
  });
}
