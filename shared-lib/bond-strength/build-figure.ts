import type { Band, Figure, FigurePoint, ReferenceLine } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import { curveBand } from '../statistics/curve-fit.ts';
import type { FittedBuild } from './build-models.ts';
import type { CurveReading } from './censored-curve.ts';

const CURVE_POINTS = 100;

/** Readings over time, the chosen curve with its band, what is required and when it is reached. */
export function buildFigure({ model, curve }: FittedBuild, readings: readonly CurveReading[], required: number | undefined, reachedH: number | null): Figure {
  const longest = 1.05 * Math.max(...readings.map(({ x }) => x), reachedH ?? 0);
  const along = Array.from({ length: CURVE_POINTS + 1 }, (_, index) => (longest * index) / CURVE_POINTS);
  const fitted = along.map((x) => ({ x, ...curveBand(curve.fit, model.curve, x) }));
  const band: Band = {
    name: '95 % interval of the curve',
    points: fitted.flatMap(({ x, low, high }) => (low === null || high === null ? [] : [{ x, low: Math.max(0, low), high }])),
  };
  const lines: ReferenceLine[] = [];
  if (required !== undefined) lines.push({ name: 'required', axis: 'y', value: required, role: 'limit' });
  if (reachedH !== null) lines.push({ name: 'reached', axis: 'x', value: reachedH, role: 'mark' });
  const points = readings.map(({ x, y, lowerBound }): FigurePoint => ({ x, y, ...(lowerBound && { open: 'up' as const }) }));
  const [initial, plateau] = curve.fit.parameters;
  const reach = reachedH === null || required === undefined ? '' : `; ${formatNumber(required, 2)} N/15 mm are reached after ${formatNumber(reachedH, 1)} h`;
  return {
    id: 'build-up',
    title: 'Bond strength after lamination',
    finding: `The bond goes from ${formatNumber(initial!, 2)} to a plateau of ${formatNumber(plateau!, 2)} N/15 mm (${model.title})${reach}.`,
    x: { title: 'Time since lamination', unit: 'h', scale: 'linear', min: 0 },
    y: { title: 'Bond strength', unit: 'N/15 mm', scale: 'linear', min: 0 },
    series: [
      { name: 'readings', kind: 'points', role: 'reading', points },
      { name: model.title, kind: 'line', role: 'fit', points: fitted.map(({ x, value }) => ({ x, y: value })) },
    ],
    bands: band.points.length > 0 ? [band] : [],
    lines,
  };
}
