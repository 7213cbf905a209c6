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
  const errors = moments.map(({ n, variance }) => variance! / n);
  const pairs = allPairs(groups.length).map(([a, b]) => ({
    a,
    b,
    difference: moments[a]!.mean - moments[b]!.mean,
    error: Math.sqrt((errors[a]! + errors[b]!) / 2),
    df: welchDegreesOfFreedom(errors[a]!, moments[a]!.n - 1, errors[b]!, moments[b]!.n - 1),
  }));
  const judged = pairs.filter(({ error }) => error > 0);
  const critical = range.upperQuantiles(1 - level, judged.map(({ df }) => df));
  const reaches = new Map(judged.map((pair, i) => [pair, critical[i]! * pair.error]));
  return pairs.map((pair) => {
    const { a, b, difference, error, df } = pair;
    const reach = reaches.get(pair);
    if (reach === undefined) return { a, b, difference, low: null, high: null, p: null };
    return { a, b, difference, low: difference - reach, high: difference + reach, p: range.upperTail(Math.abs(difference) / error, df) };
  });
}
