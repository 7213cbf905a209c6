import { studentTQuantile } from './distributions.ts';

export interface SampleSummary {
  n: number;
  mean: number;
  /** With n − 1; `null` for one value. */
  standardDeviation: number | null;
  /** Of the mean; `null` for one value. */
  standardError: number | null;
  /** t interval of the mean; `null` for one value. */
  low: number | null;
  high: number | null;
  median: number;
  minimum: number;
  maximum: number;
}

/**
 * Mean, spread and t interval of a sample. The sums are compensated and centred (two passes), which reaches the limit
 * of the data on the NIST StRD univariate sets.
 * @param values at least one finite number.
 * @param level confidence level of the interval, between 0 and 1.
 * @throws RangeError without values or with one that is not finite.
 */
export function summarise(values: readonly number[], level = 0.95): SampleSummary {
  const n = values.length;
  if (n === 0) throw new RangeError('A summary needs at least one value.');
  const culprit = values.find((value) => !Number.isFinite(value));
  if (culprit !== undefined) throw new RangeError(`A summary needs finite values, not ${culprit}.`);
  const mean = meanOf(values);
  const sorted = Float64Array.from(values).sort();
  const middle = n >> 1;
  const standardDeviation = n > 1 ? Math.sqrt(squaresAbout(values, mean) / (n - 1)) : null;
  const standardError = standardDeviation === null ? null : standardDeviation / Math.sqrt(n);
  const reach = standardError === null ? null : standardError * studentTQuantile((1 + level) / 2, n - 1);
  return {
    n,
    mean,
    standardDeviation,
    standardError,
    low: reach === null ? null : mean - reach,
    high: reach === null ? null : mean + reach,
    median: n % 2 === 1 ? sorted[middle]! : sorted[middle - 1]! / 2 + sorted[middle]! / 2,
    minimum: sorted[0]!,
    maximum: sorted[n - 1]!,
  };
}

/** Mean of a non-empty list; the second pass takes out the rounding of the first. */
export function meanOf(values: readonly number[]): number {
  const first = compensatedSum(values) / values.length;
  return first + compensatedSum(values.map((value) => value - first)) / values.length;
}

/** Sum of squares about a centre, corrected for the rounding of the centre. */
export function squaresAbout(values: readonly number[], centre: number): number {
  const differences = values.map((value) => value - centre);
  const remainder = compensatedSum(differences);
  const squares = compensatedSum(differences.map((difference) => difference * difference));
  return Math.max(squares - (remainder * remainder) / values.length, 0);
}

/** Neumaier's sum: the rounding of each addition is kept and added at the end. */
export function compensatedSum(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
