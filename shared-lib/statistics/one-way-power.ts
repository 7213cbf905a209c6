import { fQuantile } from './distributions.ts';
import { noncentralFUpperTail } from './noncentral.ts';

/**
 * Chance that one-way analysis of variance of `groups` groups of `n` readings finds that they differ.
 * @param betweenVariance of the true group means, with divisor groups − 1.
 * @param withinVariance of the readings about them.
 * Source: J. Cohen, Statistical Power Analysis, 2nd ed. (1988), chapter 8, by the non-central F distribution.
 */
export function oneWayPower(n: number, groups: number, betweenVariance: number, withinVariance: number, alpha: number): number {
  const [between, within] = [groups - 1, groups * (n - 1)];
  return noncentralFUpperTail(fQuantile(1 - alpha, between, within), between, within, (n * between * betweenVariance) / withinVariance);
}
