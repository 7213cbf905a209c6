import type { ResultValue } from '../calculation/result.ts';
import { fitCensoredNormal, type Censored } from './censored-normal.ts';

/**
 * Mean of readings that may be bracketed or open, as a result: by maximum likelihood where the readings allow, else the bound or
 * bracket that is left.
 * @param floor value that the quantity cannot fall below; the interval stops there
 * @returns the mean, and one sentence how it came about
 * @throws RangeError as `fitCensoredNormal`
 */
export function bracketedMean(readings: readonly Censored[], unit: string, level: number, floor = -Infinity): { mean: ResultValue; note: string } {
  const n = readings.length;
  const fit = fitCensoredNormal(readings, level);
  const low = fit.low === null ? null : Math.max(floor, fit.low);
  if (fit.status === 'estimated') {
    return { mean: { value: fit.mean, unit, low, high: fit.high, level: low === null && fit.high === null ? null : level, n, bound: 'exact' }, note: fit.reason };
  }
  const middle = low !== null && fit.high !== null ? (low + fit.high) / 2 : (low ?? fit.high);
  const value = fit.status === 'at-least' ? low : fit.status === 'at-most' ? fit.high : middle;
  return { mean: { value, unit, low, high: fit.high, level: null, n, bound: fit.status }, note: fit.reason };
}
