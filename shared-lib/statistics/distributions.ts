import betainc from '@stdlib/math-base-special-betainc';
import erfc from '@stdlib/math-base-special-erfc';
import gammainc from '@stdlib/math-base-special-gammainc';
import beta from '@stdlib/stats-base-dists-beta';
import chisquare from '@stdlib/stats-base-dists-chisquare';
import f from '@stdlib/stats-base-dists-f';
import normal from '@stdlib/stats-base-dists-normal';
import t from '@stdlib/stats-base-dists-t';

/**
 * Distribution functions. Quantiles and lower tails come from @stdlib (12 digits and better against 40-digit
 * references, see tests/reference/statistics/distributions.test.ts); upper tails are taken from the complementary
 * incomplete beta and gamma functions, since 1 − cdf keeps no digits of a small probability.
 * Arguments outside a distribution's domain give NaN; probabilities 0 and 1 give the ends of its support.
 */

const LOG_SQRT_TWO_PI = 0.9189385332046727;

/** P(Z ≤ z) of the standard normal. */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z / Math.SQRT2);
}

/** P(Z > z) of the standard normal, accurate far out. */
export function normalUpperTail(z: number): number {
  return 0.5 * erfc(z / Math.SQRT2);
}

/** Natural logarithm of the standard normal density. */
export function normalLogDensity(z: number): number {
  return -0.5 * z * z - LOG_SQRT_TWO_PI;
}

/** z with P(Z ≤ z) = p. The library's value is improved by one Halley step, worth two digits in the tails. */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  const start = normal.quantile(p, 0, 1);
  if (!Number.isFinite(start)) return start;
  const step = (normalCdf(start) - p) / Math.exp(normalLogDensity(start));
  return start - step / (1 + (start * step) / 2);
}

/** P(T ≤ t) of Student's t with `df` degrees of freedom. */
export function studentTCdf(value: number, df: number): number {
  return studentTUpperTail(-value, df);
}

/** P(T > t) of Student's t with `df` degrees of freedom, accurate far out. */
export function studentTUpperTail(value: number, df: number): number {
  if (!(df > 0) || Number.isNaN(value)) return Number.NaN;
  if (df === Infinity) return normalUpperTail(value);
  if (value < 0) return 1 - studentTUpperTail(-value, df);
  const square = value * value;
  if (square === Infinity) return 0;
  return square < df
    ? 0.5 * betainc(square / (df + square), 0.5, df / 2, true, true)
    : 0.5 * betainc(df / (df + square), df / 2, 0.5, true, false);
}

/** t with P(T ≤ t) = p. */
export function studentTQuantile(p: number, df: number): number {
  return df === Infinity ? normalQuantile(p) : t.quantile(p, df);
}

/** x with P(X ≤ x) = p of chi-square. */
export function chiSquareQuantile(p: number, df: number): number {
  return chisquare.quantile(p, df);
}

/** P(X > x) of chi-square. */
export function chiSquareUpperTail(x: number, df: number): number {
  if (!(df > 0) || Number.isNaN(x)) return Number.NaN;
  return x <= 0 ? 1 : gammainc(x / 2, df / 2, true, true);
}

/** x with P(X ≤ x) = p of F. */
export function fQuantile(p: number, numeratorDf: number, denominatorDf: number): number {
  return f.quantile(p, numeratorDf, denominatorDf);
}

/** P(X > x) of F. */
export function fUpperTail(x: number, numeratorDf: number, denominatorDf: number): number {
  if (!(numeratorDf > 0) || !(denominatorDf > 0) || Number.isNaN(x)) return Number.NaN;
  if (x <= 0) return 1;
  if (x === Infinity) return 0;
  const scaled = numeratorDf * x;
  return scaled > denominatorDf
    ? betainc(denominatorDf / (denominatorDf + scaled), denominatorDf / 2, numeratorDf / 2, true, false)
    : betainc(scaled / (denominatorDf + scaled), numeratorDf / 2, denominatorDf / 2, true, true);
}

/** x with P(X ≤ x) = p of the beta distribution. */
export function betaQuantile(p: number, alpha: number, betaShape: number): number {
  return beta.quantile(p, alpha, betaShape);
}
