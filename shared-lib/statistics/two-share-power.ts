import { normalCdf, normalQuantile } from './distributions.ts';

/**
 * Chance that a two-sided comparison of two shares with `n` trials each tells them apart, by the normal approximation.
 * Source: J. L. Fleiss, Statistical Methods for Rates and Proportions, 2nd ed. (1981), 3.2.
 */
export function twoSharePower(n: number, first: number, second: number, alpha: number): number {
  const mean = (first + second) / 2;
  const together = Math.sqrt(2 * mean * (1 - mean));
  const apart = Math.sqrt(first * (1 - first) + second * (1 - second));
  return normalCdf((Math.sqrt(n) * Math.abs(first - second) + normalQuantile(alpha / 2) * together) / apart);
}
