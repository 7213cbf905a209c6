import { censoredDifference } from './censored-difference.ts';
import type { CensoredMean } from './censored-mean.ts';
import { studentTQuantile, studentTUpperTail } from './distributions.ts';
import type { MeanDifference } from './mean-difference.ts';

/** What the readings say about a difference a − b that is to lie within bounds. */
export interface TwoOneSided {
  difference: number;
  /** The interval at level 2·level − 1, which lies within the bounds exactly when both tests say so; `null`: open. */
  low: number | null;
  high: number | null;
  /** p of a true difference at or below the lower bound, and at or above the upper one. */
  pLower: number;
  pUpper: number;
}

export interface Bounds {
  lower: number;
  upper: number;
}

/**
 * Two one-sided t tests of measured numbers.
 * Source: D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657.
 */
export function twoOneSidedTests({ difference, standardError, degreesOfFreedom }: MeanDifference, { lower, upper }: Bounds, level: number): TwoOneSided {
  const reach = studentTQuantile(level, degreesOfFreedom) * standardError;
  return {
    difference,
    low: difference - reach,
    high: difference + reach,
    pLower: studentTUpperTail((difference - lower) / standardError, degreesOfFreedom),
    pUpper: studentTUpperTail((upper - difference) / standardError, degreesOfFreedom),
  };
}

/**
 * The same where some readings are only bounds: by the profile likelihood of the difference, which is Welch's t where all
 * are exact. Not by a standard error (Wald): with torn specimens the likelihood is lopsided, and a symmetric interval would
 * end too near on the side that the bounds leave open.
 */
export function twoOneSidedTestsOfBounded(a: CensoredMean, b: CensoredMean, { lower, upper }: Bounds, level: number): TwoOneSided {
  const { difference, interval, p } = censoredDifference(a, b);
  const oneSided = (bound: number, within: boolean) => (within ? p(bound) / 2 : 1 - p(bound) / 2);
  return { difference, ...interval(2 * level - 1), pLower: oneSided(lower, difference > lower), pUpper: oneSided(upper, difference < upper) };
}
