import type { ResultValue } from '../calculation/result.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import { summarise } from '../statistics/summarise.ts';

/**
 * Mean of `after` over mean of `before` in percent, with the interval of independent replicates by the delta method on
 * the logarithm and Welch's degrees of freedom; no interval where one side has a single reading.
 * @param before readings above zero in their mean; so must `after` be for an interval.
 */
export function ratioOfMeansPct(before: readonly number[], after: readonly number[], level: number): ResultValue {
  const [first, second] = [summarise(before), summarise(after)];
  const value = (100 * second.mean) / first.mean;
  const n = Math.min(first.n, second.n);
  const without: ResultValue = { value, unit: '%', low: null, high: null, level: null, n, bound: 'exact' };
  if (first.standardError === null || second.standardError === null || second.mean <= 0) return without;
  const [a, b] = [(first.standardError / first.mean) ** 2, (second.standardError / second.mean) ** 2];
  const variance = a + b;
  if (variance === 0) return { ...without, low: value, high: value, level };
  const degreesOfFreedom = variance ** 2 / (a ** 2 / (first.n - 1) + b ** 2 / (second.n - 1));
  const reach = Math.exp(studentTQuantile((1 + level) / 2, degreesOfFreedom) * Math.sqrt(variance));
  return { ...without, low: value / reach, high: value * reach, level };
}
