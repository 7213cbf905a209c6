import type { Figure } from './figure.ts';

export interface AxisRange {
  /** `log` becomes `linear` when a point or reference line is zero or below: on a log axis it would vanish. */
  scale: 'linear' | 'log' | 'category';
  min: number;
  max: number;
}

const AIR = 0.06;
/** Nothing is measured below; nearer to zero the quotient of two numbers is no longer exact. */
const LEAST_ON_LOG = 1e-300;
/** Room for the arrow of a point that lies beyond. */
const AIR_OPEN = 0.14;

/**
 * The range of an axis, in its own unit: every point, error bar, band and reference line lies inside, with some air.
 * `min` and `max` of the figure are kept where the data allow it and widened where they do not.
 */
export function axisRange(figure: Figure, axis: 'x' | 'y'): AxisRange {
  const { scale, min, max, categories } = figure[axis];
  if (scale === 'category') return { scale, min: 0, max: Math.max(0, (categories?.length ?? 1) - 1) };
  const points = figure.series.flatMap((series) => series.points);
  const values = points.map((point) => point[axis]).filter((value): value is number => value !== null);
  const lines = (figure.lines ?? []).filter((line) => line.axis === axis).map((line) => line.value);
  const extents = [...values, ...lines, ...extras(figure, axis)];
  if (scale === 'log' && [...values, ...lines].every((value) => value >= LEAST_ON_LOG)) {
    return logRange(extents.filter((value) => value >= LEAST_ON_LOG), positive(min), positive(max));
  }
  if (axis === 'y' && figure.series.some((series) => series.kind === 'bars')) extents.push(0);
  const open = axis === 'y' && points.some((point) => point.open !== undefined);
  return linearRange(extents, min, max, open ? AIR_OPEN : AIR);
}

function extras(figure: Figure, axis: 'x' | 'y'): number[] {
  const bandPoints = (figure.bands ?? []).flatMap((band) => band.points);
  if (axis === 'x') return bandPoints.map((point) => point.x);
  const bars = figure.series.flatMap((series) => series.points).flatMap((point) => [point.low, point.high]);
  return [...bandPoints.flatMap((point) => [point.low, point.high]), ...bars.filter((value) => value !== undefined)];
}

function linearRange(values: number[], min: number | undefined, max: number | undefined, air: number): AxisRange {
  const { low, high } = ends(values) ?? { low: min ?? 0, high: max ?? 1 };
  const margin = (high - low) * air || Math.abs(low) * 0.05 || 1;
  const paddedLow = low >= 0 && low - margin < 0 ? 0 : low - margin;
  const paddedHigh = high <= 0 && high + margin > 0 ? 0 : high + margin;
  return {
    scale: 'linear',
    min: min !== undefined && min <= low ? min : paddedLow,
    max: max !== undefined && max >= high && max > low ? max : paddedHigh,
  };
}

function logRange(values: number[], min: number | undefined, max: number | undefined): AxisRange {
  const { low, high } = ends(values) ?? { low: min ?? 1, high: max ?? 10 };
  const factor = Math.max(1.15, (high / low) ** AIR);
  return {
    scale: 'log',
    min: min !== undefined && min <= low ? min : low / factor,
    max: max !== undefined && max >= high && max > low ? max : high * factor,
  };
}

/** By a loop: a trace may be longer than an argument list can be. */
function ends(values: number[]): { low: number; high: number } | null {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low <= high ? { low, high } : null;
}

function positive(value: number | undefined): number | undefined {
  return value !== undefined && value >= LEAST_ON_LOG ? value : undefined;
}
