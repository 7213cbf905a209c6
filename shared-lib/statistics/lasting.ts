import type { ResultValue } from '../calculation/result.ts';
import { fitCensoredNormal } from './censored-normal.ts';
import { kaplanMeier } from './kaplan-meier.ts';
import { leastLasting, type Lasting } from './least-lasting.ts';
import { summarise } from './summarise.ts';

export interface LastingSummary {
  /** Geometric mean: the middle of a log-normal by maximum likelihood, profile interval. */
  typical: ResultValue;
  /** Kaplan–Meier. */
  median: ResultValue;
  /** The specimen that lasted least. */
  least: ResultValue;
  /** How each came about, or why there is no better one. */
  notes: string[];
}

/**
 * What specimens last, in strokes, rubs or hours, where some were still whole when the test was stopped. These count as
 * lower bounds and never as if they had failed. Lasting spreads in proportion, so that its logarithm is taken as normal.
 * @param readings at least one, values above 0.
 * @throws RangeError without readings or for a value that is not above 0.
 * Source: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapters 3 and 8.
 */
export function summariseLasting(readings: readonly Lasting[], unit: string, level: number): LastingSummary {
  if (!readings.every(({ value }) => value > 0)) throw new RangeError('What lasts lasts longer than 0.');
  const notes: string[] = [];
  const whole = readings.filter(({ ended }) => !ended).length;
  if (whole > 0) notes.push(`${whole} of ${readings.length} were still whole when the test was stopped and count as lower bounds.`);
  return { typical: typicalOf(readings, unit, level, notes), median: medianOf(readings, unit, level, notes), least: leastLasting(readings, unit), notes };
}

function typicalOf(readings: readonly Lasting[], unit: string, level: number, notes: string[]): ResultValue {
  const n = readings.length;
  const logs = readings.map(({ value, ended }) => ({ low: Math.log(value), high: ended ? Math.log(value) : null }));
  const { status, mean, low, high, standardDeviation } = fitCensoredNormal(logs, level);
  const back = (end: number | null) => (end === null ? null : Math.exp(end));
  // A logarithm and back must not move a reading to the wrong side of a limit.
  const typical = (log: number) => readings.find(({ value }) => Math.abs(Math.exp(log) - value) <= 1e-9 * value)?.value ?? Math.exp(log);
  if (status !== 'estimated') {
    notes.push('Too few failed to estimate how they spread: the typical value is given as the lower bound that these specimens show.');
    return atLeast(typical(low!), unit, n);
  }
  if (n === 1 || standardDeviation === 0) {
    notes.push(n === 1 ? 'One specimen shows no spread, so there is no interval.' : 'All readings are alike: they show no spread, so there is no interval.');
    return { value: typical(mean!), unit, low: null, high: null, level: null, n, bound: 'exact' };
  }
  notes.push('The typical value is the geometric mean, by maximum likelihood for a log-normal, with a profile-likelihood interval.');
  return { value: typical(mean!), unit, low: back(low), high: back(high), level: low === null && high === null ? null : level, n, bound: 'exact' };
}

function medianOf(readings: readonly Lasting[], unit: string, level: number, notes: string[]): ResultValue {
  const n = readings.length;
  const values = readings.map(({ value }) => value);
  const { value, low, high } = kaplanMeier(values, readings.map(({ ended }) => ended), level).median;
  if (value === null) {
    notes.push('Half or more never failed, so the median is at least that of the readings.');
    return atLeast(summarise(values).median, unit, n);
  }
  return { value, unit, low, high, level: low === null && high === null ? null : level, n, bound: 'exact' };
}

function atLeast(value: number, unit: string, n: number): ResultValue {
  return { value, unit, low: value, high: null, level: null, n, bound: 'at-least' };
}
