import type { ResultValue } from '../calculation/result.ts';
import { normalCdf, normalQuantile, studentTCdf, studentTQuantile } from '../statistics/distributions.ts';
import type { Limit } from './method.ts';

/**
 * Probability that the true value lies within the limits, 0–1, after JCGM 106:2012, 7.2–7.4.
 *
 * The distribution of the true value is read back from the interval: Student's t with n − 1 degrees of freedom where
 * n ≥ 2, else a normal. An asymmetric interval is taken as two half distributions joined at the value, half of the
 * probability on each side, each scaled to its own end, so that (1 − level)/2 lies beyond each end whatever its shape.
 *
 * `null` where it cannot be given: a bound or a bracket, no value, a side of the interval that is needed and not given,
 * a range without a level, an interval of no width.
 */
export function conformityProbability(result: ResultValue, limit: Pick<Limit, 'lower' | 'upper'>): number | null {
  const { value, level, low, high, bound, n } = result;
  if (bound !== 'exact' || value === null || level === null || level <= 0 || level >= 1) return null;
  if (low !== null && high !== null && high <= low) return null;

  const tail = 1 - (1 - level) / 2;
  const coverage = n >= 2 ? studentTQuantile(tail, n - 1) : normalQuantile(tail);
  const below = (at: number): number | null => {
    const end = at < value ? low : high;
    if (end === null) return null;
    const scale = Math.abs(end - value) / coverage;
    if (scale === 0) return at < value ? 0 : 1;
    const standardised = (at - value) / scale;
    return n >= 2 ? studentTCdf(standardised, n - 1) : normalCdf(standardised);
  };

  const belowLower = limit.lower === null ? 0 : below(limit.lower);
  const belowUpper = limit.upper === null ? 1 : below(limit.upper);
  if (belowLower === null || belowUpper === null) return null;
  return Math.min(1, Math.max(0, belowUpper - belowLower));
}
