import { c4Of, chartConstants } from './chart-constants.ts';
import { meanOf, summarise } from './summarise.ts';

export interface ChartPart {
  points: number[];
  centre: number;
  lower: number;
  upper: number;
}

export interface ControlLimits {
  /** The readings or subgroup means. */
  level: ChartPart;
  /** Ranges, moving ranges or standard deviations. */
  spread: ChartPart;
  /** Standard deviation within subgroups that the limits stand on. */
  sigma: number;
}

export type ChartKind = 'xbar-r' | 'xbar-s' | 'individuals';

const SIGMAS = 3;

/**
 * Control limits at three standard errors.
 * @param subgroups of equal size; for `individuals` of one reading each.
 * @throws RangeError for unequal or unsuitable sizes or fewer than two subgroups.
 * Source: ISO 7870-2; W. A. Shewhart, Economic Control of Quality (1931).
 */
export function controlLimits(subgroups: readonly (readonly number[])[], kind: ChartKind): ControlLimits {
  const n = subgroups[0]?.length ?? 0;
  if (subgroups.length < 2 || subgroups.some(({ length }) => length !== n)) throw new RangeError('A control chart needs at least two subgroups, all with as many readings.');
  if (kind === 'individuals') return individuals(subgroups.map(([value]) => value!));
  if (n < 2) throw new RangeError('Subgroups need at least two readings; for single ones use the chart of individuals.');
  const means = subgroups.map(meanOf);
  const grand = meanOf(means);
  if (kind === 'xbar-r') {
    const { d2, d3 } = chartConstants(n);
    const ranges = subgroups.map((values) => Math.max(...values) - Math.min(...values));
    const mean = meanOf(ranges);
    return assemble(means, grand, mean / d2, n, { points: ranges, centre: mean, lower: Math.max(0, mean * (1 - (SIGMAS * d3) / d2)), upper: mean * (1 + (SIGMAS * d3) / d2) });
  }
  const c4 = c4Of(n);
  const spreads = subgroups.map((values) => summarise(values).standardDeviation!);
  const mean = meanOf(spreads);
  const share = (SIGMAS * Math.sqrt(1 - c4 * c4)) / c4;
  return assemble(means, grand, mean / c4, n, { points: spreads, centre: mean, lower: Math.max(0, mean * (1 - share)), upper: mean * (1 + share) });
}

function individuals(values: number[]): ControlLimits {
  const moving = values.slice(1).map((value, i) => Math.abs(value - values[i]!));
  const { d2, d3 } = chartConstants(2);
  const mean = meanOf(moving);
  return assemble(values, meanOf(values), mean / d2, 1, { points: moving, centre: mean, lower: 0, upper: mean * (1 + (SIGMAS * d3) / d2) });
}

function assemble(points: number[], centre: number, sigma: number, n: number, spread: ChartPart): ControlLimits {
  const reach = (SIGMAS * sigma) / Math.sqrt(n);
  return { level: { points, centre, lower: centre - reach, upper: centre + reach }, spread, sigma };
}
