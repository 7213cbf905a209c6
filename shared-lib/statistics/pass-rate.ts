import betainc from '@stdlib/math-base-special-betainc';

/** P(at most `failures` of `n` fail) when each fails with chance `rate`; exact binomial. */
export function atMostFailures(failures: number, n: number, rate: number): number {
  return failures >= n ? 1 : betainc(1 - rate, n - failures, failures + 1, true, false);
}

/**
 * Specimens needed so that at most `failures` failures show, at the level, that the true pass rate is at least `passRate`.
 * @throws RangeError for a rate or level outside 0 to 1 or failures that are not a whole number.
 * Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404; for no failure, ln(1 − level)/ln(passRate).
 */
export function specimensForPassRate(passRate: number, failures: number, level: number): number {
  if (!(passRate > 0 && passRate < 1) || !(level > 0 && level < 1)) throw new RangeError('A pass rate and a level lie between 0 and 1.');
  if (!Number.isInteger(failures) || failures < 0) throw new RangeError('Failures are a whole number, 0 or more.');
  const shown = (n: number) => atMostFailures(failures, n, 1 - passRate) <= 1 - level;
  let high = failures + 1;
  while (!shown(high)) high *= 2;
  let low = failures;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (shown(middle)) high = middle;
    else low = middle;
  }
  return high;
}
