import { groupMoments, pooledVariance } from './group-moments.ts';
import { allPairs } from './pair-comparison.ts';
import type { PairComparison } from './pair-comparison.ts';
import { studentizedRange } from './studentized-range.ts';

/**
 * All pairs of groups with one common spread, Tukey's comparison with Kramer's allowance for unequal counts.
 * @returns pairs whose p and interval are `null` where the groups show no spread within.
 * @throws RangeError for fewer than two groups, an empty group or a value that is not finite.
 * Source: J. W. Tukey (1953); C. Y. Kramer, Biometrics 12 (1956) 307; A. J. Hayter, Ann. Stat. 12 (1984) 61.
 */
export function tukeyKramer(groups: readonly (readonly number[])[], level = 0.95): PairComparison[] {
  const moments = groupMoments(groups);
  const { variance, degreesOfFreedom } = pooledVariance(moments);
  const range = studentizedRange(groups.length);
  const critical = variance ? range.upperQuantile(1 - level, degreesOfFreedom) : null;
  return allPairs(groups.length).map(([a, b]) => {
    const difference = moments[a]!.mean - moments[b]!.mean;
    if (critical === null) return { a, b, difference, low: null, high: null, p: null };
    const error = Math.sqrt((variance! / 2) * (1 / moments[a]!.n + 1 / moments[b]!.n));
    const reach = critical * error;
    return { a, b, difference, low: difference - reach, high: difference + reach, p: range.upperTail(Math.abs(difference) / error, degreesOfFreedom) };
  });
}
