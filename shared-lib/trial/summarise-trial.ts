import type { ResultValue } from '../calculation/result.ts';
import { bracketedMean } from '../statistics/bracketed-mean.ts';
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
  const { mean, note: how } = bracketedMean(readings.map(censoredOf), unit, level);
  return { result: mean, note: mean.bound === 'exact' ? note : note || how };
}
