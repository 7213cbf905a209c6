import { findRoot } from './find-root.ts';
import { groupMoments, pooledVariance } from './group-moments.ts';
import { noncentralTUpperTail } from './noncentral.ts';

export interface EffectSize {
  /** Difference of the means in standard deviations, corrected for small samples. */
  g: number;
  low: number;
  high: number;
}

/** Non-centralities beyond this are not looked for. */
const LARGEST = 200;

/**
 * Hedges' g of two groups with the interval from the non-central t distribution of their common spread.
 * @returns `null` where the groups show no spread within, or differ by more than can be searched.
 * @throws RangeError for an empty group or a value that is not finite.
 * Source: L. V. Hedges, J. Educ. Stat. 6 (1981) 107; G. Cumming, S. Finch, Educ. Psychol. Meas. 61 (2001) 532.
 */
export function hedgesG(a: readonly number[], b: readonly number[], level = 0.95): EffectSize | null {
  const moments = groupMoments([a, b]);
  const { variance, degreesOfFreedom: df } = pooledVariance(moments);
  if (!variance || df < 2) return null;
  const perUnit = Math.sqrt(1 / a.length + 1 / b.length);
  const d = (moments[0]!.mean - moments[1]!.mean) / Math.sqrt(variance);
  const t = d / perUnit;
  if (Math.abs(t) > LARGEST / 2) return null;
  const correction = 1 - 3 / (4 * df - 1);
  const end = (tail: number) => findRoot((nc) => noncentralTUpperTail(t, df, nc) - tail, -LARGEST, LARGEST, 1e-9) * perUnit * correction;
  return { g: d * correction, low: end((1 - level) / 2), high: end((1 + level) / 2) };
}
