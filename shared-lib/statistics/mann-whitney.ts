import { normalQuantile, normalUpperTail } from './distributions.ts';
import { midranks } from './ranks.ts';
import { choiceSumDistribution, lowerQuantile, twoSidedTail } from './rank-sum-distribution.ts';

export interface MannWhitney {
  /** Pairs in which x is the larger, equal ones counting half. */
  statistic: number;
  /** Two-sided. */
  p: number;
  exact: boolean;
  /** Hodges–Lehmann estimate of the shift: the median of all differences x − y. */
  shift: number;
  /** Interval of the shift; `null` where so few readings cannot reach the level. */
  low: number | null;
  high: number | null;
}

/** Up to this many readings the distribution is computed exactly, ties included. */
const MOST_EXACT = 80;

/**
 * Do two groups differ in level? Mann–Whitney's rank test with the exact permutation distribution (midranks for ties),
 * and the shift with the interval that belongs to the test; with more than 80 readings by the normal approximation with
 * correction for continuity.
 * With ties the interval is that of untied readings, which then covers more than its level.
 * @throws RangeError for an empty group or a value that is not finite.
 * Source: M. Hollander, D. A. Wolfe, Nonparametric Statistical Methods, 2nd ed. (1999), 4.1 to 4.3.
 */
export function mannWhitney(x: readonly number[], y: readonly number[], level = 0.95): MannWhitney {
  if (x.length === 0 || y.length === 0) throw new RangeError('A rank test needs at least one value in each group.');
  if (![...x, ...y].every(Number.isFinite)) throw new RangeError('A rank test needs finite numbers.');
  const [m, n] = [x.length, y.length];
  const { ranks, ties } = midranks([...x, ...y]);
  const statistic = ranks.slice(0, m).reduce((sum, rank) => sum + rank, 0) - (m * (m + 1)) / 2;
  const exact = m + n <= MOST_EXACT;
  const differences = Float64Array.from(x.flatMap((a) => y.map((b) => a - b))).sort();
  const middle = differences.length >> 1;
  const shift = differences.length % 2 === 1 ? differences[middle]! : (differences[middle - 1]! + differences[middle]!) / 2;
  const outer = outerCount(m, n, (1 - level) / 2, exact);
  return {
    statistic,
    p: exact ? exactP(ranks, m) : normalP(statistic, m, n, ties),
    exact,
    shift,
    low: outer < 0 ? null : differences[outer]!,
    high: outer < 0 ? null : differences[differences.length - 1 - outer]!,
  };
}

function exactP(ranks: readonly number[], m: number): number {
  const doubled = ranks.map((rank) => 2 * rank);
  const observed = doubled.slice(0, m).reduce((sum, rank) => sum + rank, 0);
  return twoSidedTail(choiceSumDistribution(doubled, m), observed, m * (ranks.length + 1));
}

function normalP(statistic: number, m: number, n: number, ties: number): number {
  const variance = ((m * n) / 12) * (m + n + 1 - ties / ((m + n) * (m + n - 1)));
  if (!(variance > 0)) return 1;
  const distance = Math.max(0, Math.abs(statistic - (m * n) / 2) - 0.5);
  return Math.min(1, 2 * normalUpperTail(distance / Math.sqrt(variance)));
}

/** How many differences on each side lie outside the interval; −1 where even the widest does not reach the level. */
function outerCount(m: number, n: number, tail: number, exact: boolean): number {
  if (!exact) return Math.floor((m * n) / 2 + normalQuantile(tail) * Math.sqrt((m * n * (m + n + 1)) / 12)) - 1;
  const untied = Array.from({ length: m + n }, (_, index) => index + 1);
  return lowerQuantile(choiceSumDistribution(untied, m), tail) - (m * (m + 1)) / 2;
}
