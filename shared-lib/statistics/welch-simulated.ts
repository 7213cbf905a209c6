import { groupMoments } from './group-moments.ts';
import { allPairs, welchDegreesOfFreedom } from './pair-comparison.ts';
import type { PairComparison } from './pair-comparison.ts';
import { seededRandom } from './random.ts';
import type { Random } from './random.ts';

/** p values are shares of one more, so that none falls on 5 % exactly. */
const DRAWS = 20_000;
/** More pairs than this would keep the bench waiting. */
export const MOST_SIMULATED_PAIRS = 400;

/**
 * All pairs of groups, each judged by its own spread with Welch's t, together by simulation: groups of one mean with the
 * spreads that were found are drawn 20 000 times, each draw with new estimates of its spreads, and the largest difference
 * of every draw says how large one may be by chance. Keeps its level where few readings make Games and Howell's
 * comparison too ready and Tamhane's too slow to find a difference. Repeatable: always the same draws.
 * @returns pairs whose p and interval are `null` where both groups show no spread.
 * @throws RangeError for fewer than two groups, a group with fewer than two values or a value that is not finite.
 * Source: parametric bootstrap after K. Krishnamoorthy, F. Lu, T. Mathew, Comput. Stat. Data Anal. 51 (2007) 5731 (from
 * memory), here of the largest of all pairs; t of different degrees of freedom are made alike by D. L. Wallace's
 * transformation, Ann. Math. Stat. 30 (1959) 1124 (from memory), which sets the share of each pair and not the level.
 */
export function welchSimulated(groups: readonly (readonly number[])[], level = 0.95): PairComparison[] {
  const moments = groupMoments(groups);
  if (moments.some(({ n }) => n < 2)) throw new RangeError('A comparison with separate spreads needs at least two values in each group.');
  const places = allPairs(groups.length);
  const counts = moments.map(({ n }) => n);
  const errors = moments.map(({ n, variance }) => variance! / n);
  const largest = largestOfDraws(counts, errors, places);
  const allowed = largest[Math.max(0, Math.ceil((1 - level) * (DRAWS + 1)) - 2)]!;
  return places.map(([a, b]) => {
    const difference = moments[a]!.mean - moments[b]!.mean;
    const [u, v] = [errors[a]!, errors[b]!];
    if (!(u + v > 0)) return { a, b, difference, low: null, high: null, p: null };
    const df = welchDegreesOfFreedom(u, counts[a]! - 1, v, counts[b]! - 1);
    const reach = Math.sqrt((u + v) * squareOfT(allowed, df));
    return { a, b, difference, low: difference - reach, high: difference + reach, p: (1 + countAbove(largest, normalSquare(difference ** 2 / (u + v), df))) / (DRAWS + 1) };
  });
}

/** Largest squared difference, as of a normal, of each draw; falling. */
function largestOfDraws(counts: readonly number[], errors: readonly number[], places: readonly (readonly [number, number])[]): Float64Array {
  const random = seededRandom(1);
  const means = new Float64Array(counts.length);
  const drawn = new Float64Array(counts.length);
  const largest = new Float64Array(DRAWS);
  for (let draw = 0; draw < DRAWS; draw++) {
    for (let g = 0; g < counts.length; g++) {
      means[g] = Math.sqrt(errors[g]!) * random.normal();
      drawn[g] = (errors[g]! * chiSquare(counts[g]! - 1, random)) / (counts[g]! - 1);
    }
    let most = 0;
    for (const [a, b] of places) {
      const [u, v] = [drawn[a]!, drawn[b]!];
      if (!(u + v > 0)) continue;
      const square = normalSquare((means[a]! - means[b]!) ** 2 / (u + v), welchDegreesOfFreedom(u, counts[a]! - 1, v, counts[b]! - 1));
      if (square > most) most = square;
    }
    largest[draw] = most;
  }
  return largest.sort().reverse();
}

/** Few degrees of freedom by their definition, many by E. B. Wilson and M. M. Hilferty, PNAS 17 (1931) 684. */
function chiSquare(df: number, random: Random): number {
  if (df > 30) return df * (1 - 2 / (9 * df) + random.normal() * Math.sqrt(2 / (9 * df))) ** 3;
  let sum = 0;
  for (let i = 0; i < df; i++) sum += random.normal() ** 2;
  return sum;
}

function shrinkage(df: number): number {
  return ((8 * df + 1) / (8 * df + 3)) ** 2;
}

function normalSquare(squareOfT: number, df: number): number {
  return shrinkage(df) * df * Math.log1p(squareOfT / df);
}

function squareOfT(normalSquare: number, df: number): number {
  return df * Math.expm1(normalSquare / (shrinkage(df) * df));
}

/** How many of the falling values are at least `value`. */
function countAbove(falling: Float64Array, value: number): number {
  let [low, high] = [0, falling.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (falling[middle]! >= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
