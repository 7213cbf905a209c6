/** How p values of several tests are raised so that they can be judged together. */
export type Adjustment = 'holm' | 'hochberg' | 'bonferroni' | 'benjamini-hochberg';

/**
 * Adjusted p values, in the order given. Holm and Bonferroni keep the chance of any false finding at its level whatever
 * the tests have in common, Hochberg for independent and positively related ones; Benjamini–Hochberg keeps only the
 * expected share of false findings.
 * @throws RangeError for a p value outside 0 to 1.
 * Source: S. Holm, Scand. J. Stat. 6 (1979) 65; Y. Hochberg, Biometrika 75 (1988) 800; Y. Benjamini, Y. Hochberg,
 * J. R. Stat. Soc. B 57 (1995) 289.
 */
export function adjustP(ps: readonly number[], method: Adjustment): number[] {
  if (!ps.every((p) => p >= 0 && p <= 1)) throw new RangeError('A p value lies between 0 and 1.');
  const m = ps.length;
  if (method === 'bonferroni') return ps.map((p) => Math.min(1, p * m));
  const rising = ps.map((_, index) => index).sort((a, b) => ps[a]! - ps[b]!);
  const adjusted = ps.map(() => 0);
  const stepDown = method === 'holm';
  let bound = stepDown ? 0 : 1;
  for (let step = 0; step < m; step++) {
    const rank = stepDown ? step : m - 1 - step;
    const index = rising[rank]!;
    const factor = method === 'benjamini-hochberg' ? m / (rank + 1) : m - rank;
    bound = stepDown ? Math.max(bound, factor * ps[index]!) : Math.min(bound, factor * ps[index]!);
    adjusted[index] = Math.min(1, bound);
  }
  return adjusted;
}
