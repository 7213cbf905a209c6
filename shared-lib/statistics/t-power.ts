import { studentTQuantile } from './distributions.ts';
import { noncentralTUpperTail } from './noncentral.ts';

export type TDesign = 'two-sample' | 'paired' | 'one-sample';

/**
 * Chance that a two-sided t test finds a true `difference` with `n` readings per group (pairs, readings). Both tails count.
 * @param standardDeviation of the readings; for pairs, of their differences.
 * @param alpha two-sided chance of a false finding.
 * Source: J. Cohen, Statistical Power Analysis, 2nd ed. (1988), chapter 2, by the non-central t distribution.
 */
export function tPower(n: number, difference: number, standardDeviation: number, alpha: number, design: TDesign = 'two-sample'): number {
  const df = design === 'two-sample' ? 2 * (n - 1) : n - 1;
  const noncentrality = (Math.abs(difference) / standardDeviation) * Math.sqrt(design === 'two-sample' ? n / 2 : n);
  const critical = -studentTQuantile(alpha / 2, df);
  return noncentralTUpperTail(critical, df, noncentrality) + noncentralTUpperTail(critical, df, -noncentrality);
}
