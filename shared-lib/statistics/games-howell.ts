import { groupMoments } from './group-moments.ts';
import { allPairs, welchDegreesOfFreedom } from './pair-comparison.ts';
import type { PairComparison } from './pair-comparison.ts';
import { studentizedRange } from './studentized-range.ts';

/**
 * All pairs of groups, each pair judged by its own spread.
 * @returns pairs whose p and interval are `null` where both groups show no spread.
 * @throws RangeError for fewer than two groups, a group with fewer than two values or a value that is not finite.
 * Source: P. A. Games, J. F. Howell, J. Educ. Stat. 1 (1976) 113.
 */
export function gamesHowell(groups: readonly (readonly number[])[], level = 0.95): PairComparison[] {
  const moments = groupMoments(groups);
  if (moments.some(({ n }) => n < 2)) throw new RangeError('A comparison with separate spreads needs at least two values in each group.');
  const range = studentizedRange(groups.length);
  return allPairs(groups.length).map(([a, b]) => {
    const [first, second] = [moments[a]!, moments[b]!];
    const difference = first.mean - second.mean;
    const [u, v] = [first.variance! / first.n, second.variance! / second.n];
    if (!(u + v > 0)) return { a, b, difference, low: null, high: null, p: null };
    const df = welchDegreesOfFreedom(u, first.n - 1, v, second.n - 1);
    const error = Math.sqrt((u + v) / 2);
    const reach = error * range.upperQuantile(1 - level, df);
    return { a, b, difference, low: difference - reach, high: difference + reach, p: range.upperTail(Math.abs(difference) / error, df) };
  });
}
