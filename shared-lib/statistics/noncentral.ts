import betainc from '@stdlib/math-base-special-betainc';
import gammaln from '@stdlib/math-base-special-gammaln';
import { normalUpperTail } from './distributions.ts';
import { averageOverScale } from './over-scale.ts';

/** P(T > t) of Student's t with non-centrality δ: the mean over the estimated spread of a normal tail. */
export function noncentralTUpperTail(t: number, df: number, noncentrality: number): number {
  const tail = (sign: 1 | -1) => averageOverScale((s) => Math.log(normalUpperTail(sign * (t * s - noncentrality))), df);
  // The smaller tail is computed, the larger is its complement.
  return t > noncentrality ? tail(1) : 1 - tail(-1);
}

/**
 * P(X > x) of F with non-centrality λ = Σ nᵢ(μᵢ − μ̄)²/σ²: central tails weighted by a Poisson distribution of mean λ/2.
 * Source: N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 2, 2nd ed. (1995), 30.2.
 */
export function noncentralFUpperTail(x: number, numeratorDf: number, denominatorDf: number, noncentrality: number): number {
  if (x <= 0) return 1;
  const half = noncentrality / 2;
  const scaled = (numeratorDf * x) / (numeratorDf * x + denominatorDf);
  const tail = (j: number) => betainc(scaled, numeratorDf / 2 + j, denominatorDf / 2, true, true);
  const weight = (j: number) => (half === 0 ? (j === 0 ? 1 : 0) : Math.exp(j * Math.log(half) - half - gammaln(j + 1)));
  const middle = Math.floor(half);
  let total = 0;
  for (let j = middle, w = weight(j); w > 1e-18 && j < middle + 1e5; j++, w = weight(j)) total += w * tail(j);
  for (let j = middle - 1, w = weight(j); j >= 0 && w > 1e-18; j--, w = weight(j)) total += w * tail(j);
  return Math.min(1, total);
}
