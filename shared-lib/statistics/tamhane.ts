import { studentTQuantile, studentTUpperTail } from './distributions.ts';
import { groupMoments } from './group-moments.ts';
import { allPairs, welchDegreesOfFreedom } from './pair-comparison.ts';
import type { PairComparison } from './pair-comparison.ts';

/**
 * All pairs of groups, each judged by its own spread with Welch's t, together by Šidák's bound. Errs on the safe side
 * where the comparison of Games and Howell is too ready to find differences: many groups of few readings.
 * @returns pairs whose p and interval are `null` where both groups show no spread.
 * @throws RangeError for fewer than two groups, a group with fewer than two values or a value that is not finite.
 * Source: A. C. Tamhane, J. Am. Stat. Assoc. 74 (1979) 471, procedure T2.
 */
export function tamhane(groups: readonly (readonly number[])[], level = 0.95): PairComparison[] {
  const moments = groupMoments(groups);
  if (moments.some(({ n }) => n < 2)) throw new RangeError('A comparison with separate spreads needs at least two values in each group.');
  const pairs = allPairs(groups.length);
  const tail = sidakTail(1 - level, pairs.length) / 2;
  return pairs.map(([a, b]) => {
    const [first, second] = [moments[a]!, moments[b]!];
    const difference = first.mean - second.mean;
    const [u, v] = [first.variance! / first.n, second.variance! / second.n];
    if (!(u + v > 0)) return { a, b, difference, low: null, high: null, p: null };
    const df = welchDegreesOfFreedom(u, first.n - 1, v, second.n - 1);
    const error = Math.sqrt(u + v);
    const reach = -studentTQuantile(tail, df) * error;
    return { a, b, difference, low: difference - reach, high: difference + reach, p: sidakP(2 * studentTUpperTail(Math.abs(difference) / error, df), pairs.length) };
  });
}

/** The p value of one among `count` tests when all are judged together (Šidák 1967). */
export function sidakP(p: number, count: number): number {
  return -Math.expm1(count * Math.log1p(-Math.min(1, p)));
}

/** The p value at which one of `count` tests may be called, so that all together err with probability `p`. */
export function sidakTail(p: number, count: number): number {
  return -Math.expm1(Math.log1p(-p) / count);
}
