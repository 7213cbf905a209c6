import { chiSquareQuantile } from './distributions.ts';

/**
 * Exact interval of the mean of a count: never less than its level, whatever the true mean. Divided by the area (length,
 * time) that was looked at it is the interval of the rate.
 * @throws RangeError unless the count is whole and not negative.
 * Source: F. Garwood, Biometrika 28 (1936) 437.
 */
export function poissonInterval(count: number, level = 0.95): { low: number; high: number } {
  if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`A count is a whole number, 0 or more, not ${count}.`);
  const tail = (1 - level) / 2;
  return {
    low: count === 0 ? 0 : chiSquareQuantile(tail, 2 * count) / 2,
    high: chiSquareQuantile(1 - tail, 2 * count + 2) / 2,
  };
}
