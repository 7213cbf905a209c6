import { aiccOfLeastSquares } from '../statistics/akaike.ts';
import { fitCurve } from '../statistics/curve-fit.ts';
import type { RubSeries } from './rub-specimens.ts';

export interface RubCurve {
  /** 'straight' or 'to a plateau'. */
  shape: 'straight' | 'to a plateau';
  at: (strokes: number) => number;
}

/**
 * A curve from zero through the readings of all specimens, for the eye: straight, or towards a plateau where that
 * explains the readings better (AICc). Results are read from the specimens, not from the curve.
 * @returns `null` with fewer than three different counts of strokes above 0.
 */
export function rubCurve(series: readonly RubSeries[]): RubCurve | null {
  const x = series.flatMap(({ strokes }) => strokes.slice(1));
  const y = series.flatMap(({ values }) => values.slice(1));
  if (new Set(x).size < 3) return null;
  const slope = x.reduce((sum, at, i) => sum + at * y[i]!, 0) / x.reduce((sum, at) => sum + at * at, 0);
  const straight: RubCurve = { shape: 'straight', at: (strokes) => slope * strokes };
  if (!(slope > 0)) return straight;
  const farthest = Math.max(...x);
  const model = (at: number, [plateau, rate]: readonly number[]) => -plateau! * Math.expm1(-rate! * at);
  const start = [0.3, 1, 3, 10].map((speed) => [Math.max(...y), speed / farthest]);
  const fit = fitCurve({ model, x, y, start, lower: [0, 1e-3 / farthest], upper: [Infinity, 1e3 / farthest] });
  const squares = x.reduce((sum, at, i) => sum + (y[i]! - slope * at) ** 2, 0);
  const [line, bent] = [aiccOfLeastSquares(squares, x.length, 1), aiccOfLeastSquares(fit.residualSumOfSquares, x.length, 2)];
  const better = line !== null && (bent === null ? fit.residualSumOfSquares < squares / 10 : bent < line);
  return better ? { shape: 'to a plateau', at: (strokes) => model(strokes, fit.parameters) } : straight;
}
