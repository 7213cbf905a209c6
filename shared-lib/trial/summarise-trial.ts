import type { ResultValue } from '../calculation/result.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import { summarise } from '../statistics/summarise.ts';
import { censoredOf, type TrialReading } from './trial-reading.ts';

/**
 * One trial in one response: the mean with its interval, by maximum likelihood where readings are bracketed or open; of
 * grades the median, without one. `null` without readings.
 * @returns the value and a sentence on what is missing, or ''
 */
export function summariseTrial(readings: readonly TrialReading[], kind: 'number' | 'grade', unit: string, level: number): { result: ResultValue; note: string } | null {
  const n = readings.length;
  if (n === 0) return null;
  const note = n === 1 ? 'One reading: no interval.' : '';
  if (kind === 'grade') {
    return { result: { value: summarise(readings.map(({ value }) => value)).median, unit, low: null, high: null, level: null, n, bound: 'exact' }, note: n === 1 ? 'One reading.' : '' };
  }
  const fit = fitCensoredNormal(readings.map(censoredOf), level);
  if (fit.status === 'estimated') {
    return { result: { value: fit.mean, unit, low: fit.low, high: fit.high, level: fit.low === null && fit.high === null ? null : level, n, bound: 'exact' }, note };
  }
  const value = fit.status === 'at-least' ? fit.low : fit.status === 'at-most' ? fit.high : middle(fit.low, fit.high);
  return { result: { value, unit, low: fit.low, high: fit.high, level: null, n, bound: fit.status }, note: note || fit.reason };
}

function middle(low: number | null, high: number | null): number | null {
  return low === null || high === null ? (low ?? high) : (low + high) / 2;
}
