/**
 * Which readings, sorted, bracket the median of what they were taken from: the r-th lowest and the r-th highest, r as
 * large as the level allows. Exact for any continuous distribution; with ties it covers at least as often.
 * @returns the rank r (1: the extremes) and how often such a bracket holds the median; `null` where even the extremes
 *   bracket it too seldom (fewer than six readings at 95 %).
 * Source: W. J. Conover, Practical Nonparametric Statistics, 3rd ed. (1999), 3.2; H. A. David, H. N. Nagaraja, Order Statistics,
 * 3rd ed. (2003), 7.1.
 */
export function medianRank(n: number, level = 0.95): { rank: number; coverage: number } | null {
  const tail = (1 - level) / 2;
  // P(exactly k of n readings lie below the median), by logarithms: 2^−n is too small for a long list.
  let logTerm = -n * Math.LN2;
  let below = Math.exp(logTerm);
  let found: { rank: number; coverage: number } | null = null;
  for (let k = 1; 2 * k <= n && below <= tail; k += 1) {
    found = { rank: k, coverage: 1 - 2 * below };
    logTerm += Math.log((n - k + 1) / k);
    below += Math.exp(logTerm);
  }
  return found;
}
