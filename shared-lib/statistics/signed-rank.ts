import { normalUpperTail } from './distributions.ts';
import { midranks } from './ranks.ts';
import { lowerQuantile, signSumDistribution, twoSidedTail } from './rank-sum-distribution.ts';

export interface SignedRank {
  /** Sum of the ranks of the positive differences. */
  statistic: number;
  /** Two-sided. */
  p: number;
  exact: boolean;
  /** Median of the means of all pairs of differences (Hodges–Lehmann). */
  shift: number;
  low: number | null;
  high: number | null;
}

const MOST_EXACT = 60;

/**
 * Wilcoxon's signed-rank test of paired differences against zero: exact, ties by midranks; differences of zero are left
 * out of the test, as usual, but not out of the estimate.
 * @returns `null` where every difference is zero.
 * @throws RangeError without differences or for one that is not finite.
 * Source: M. Hollander, D. A. Wolfe, Nonparametric Statistical Methods, 2nd ed. (1999), 3.1 to 3.3.
 */
export function signedRank(differences: readonly number[], level = 0.95): SignedRank | null {
  if (differences.length === 0 || !differences.every(Number.isFinite)) throw new RangeError('A signed-rank test needs finite differences.');
  const kept = differences.filter((difference) => difference !== 0);
  if (kept.length === 0) return null;
  const { ranks, ties } = midranks(kept.map(Math.abs));
  const statistic = ranks.reduce((sum, rank, i) => sum + (kept[i]! > 0 ? rank : 0), 0);
  const n = kept.length;
  const exact = n <= MOST_EXACT;
  const all = differences.length;
  const means = Float64Array.from(differences.flatMap((a, i) => differences.slice(i).map((b) => (a + b) / 2))).sort();
  const middle = means.length >> 1;
  const outer = all <= MOST_EXACT ? lowerQuantile(signSumDistribution(Array.from({ length: all }, (_, i) => i + 1)), (1 - level) / 2) : -1;
  return {
    statistic,
    p: exact ? twoSidedTail(signSumDistribution(ranks.map((rank) => 2 * rank)), 2 * statistic, (n * (n + 1)) / 2) : normalP(statistic, n, ties),
    exact,
    shift: means.length % 2 === 1 ? means[middle]! : (means[middle - 1]! + means[middle]!) / 2,
    low: outer < 0 ? null : means[outer]!,
    high: outer < 0 ? null : means[means.length - 1 - outer]!,
  };
}

function normalP(statistic: number, n: number, ties: number): number {
  const variance = (n * (n + 1) * (2 * n + 1)) / 24 - ties / 48;
  return Math.min(1, 2 * normalUpperTail(Math.max(0, Math.abs(statistic - (n * (n + 1)) / 4) - 0.5) / Math.sqrt(variance)));
}
