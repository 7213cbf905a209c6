import gammaln from '@stdlib/math-base-special-gammaln';
import { normalCdf, studentTQuantile } from './distributions.ts';
import { integrate } from './gauss-legendre.ts';

/**
 * Chance that two one-sided t tests prove two groups of `n` readings equivalent within `lower` to `upper`.
 * @param difference the true one. @param alpha of each one-sided test.
 * Source: D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657; the spread found is averaged over exactly.
 */
export function equivalencePower(n: number, difference: number, lower: number, upper: number, standardDeviation: number, alpha: number): number {
  const df = 2 * (n - 1);
  const error = standardDeviation * Math.sqrt(2 / n);
  const t = studentTQuantile(1 - alpha, df);
  const [below, above] = [(lower - difference) / error, (upper - difference) / error];
  // Beyond this spread no difference would do.
  const widest = (above - below) / (2 * t);
  const logScale = Math.log(2) + (df / 2) * Math.log(df / 2) - gammaln(df / 2);
  const reach = 10 / Math.sqrt(2 * df);
  const [from, to] = [Math.max(0, 1 - reach), Math.min(widest, 1 + reach)];
  if (to <= from) return 0;
  const chance = (s: number) => Math.exp(logScale + (df - 1) * Math.log(s) - (df / 2) * s * s) * (normalCdf(above - t * s) - normalCdf(below + t * s));
  return integrate(chance, from, to, 8);
}
