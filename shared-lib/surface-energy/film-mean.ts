import type { ResultValue } from '../calculation/result.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import type { Bracket } from './bracket.ts';

/** Mean and spread of the film's wetting tension with what the reader must know about how they came about. */
export interface FilmMean {
  wettingTension: ResultValue;
  spread: ResultValue;
  note: string[];
}

/**
 * Mean and standard deviation, mN/m, of the wetting tension over a film from the brackets of its positions. Where they do
 * not suffice for an estimate the brackets themselves are the answer: between, at least or at most.
 *
 * @param level confidence level of the intervals, 0–1
 */
export function filmMean(brackets: readonly Bracket[], level: number): FilmMean {
  const observations = brackets
    .filter((bracket) => bracket.low !== null || bracket.high !== null)
    .map(({ low, high }) => ({ low, high }));
  const unknown: ResultValue = { value: null, unit: 'mN/m', low: null, high: null, level: null, n: observations.length, bound: 'exact' };
  if (observations.length === 0) {
    return { wettingTension: unknown, spread: unknown, note: ['No position gives a bracket, so there is no wetting tension.'] };
  }
  const fit = fitCensoredNormal(observations, level);
  const { low, high } = fit;
  if (fit.status === 'estimated') {
    return {
      wettingTension: { ...unknown, value: fit.mean, low, high, level },
      spread: { ...unknown, value: fit.standardDeviation, low: fit.sdLow, high: fit.sdHigh, level },
      note: fit.standardDeviation === 0 || low === null || high === null ? [fit.reason] : [],
    };
  }
  const value = fit.status === 'at-least' ? low : fit.status === 'at-most' ? high : middle(low, high);
  return {
    wettingTension: { ...unknown, value, low, high, bound: fit.status },
    spread: unknown,
    note: [fit.reason],
  };
}

function middle(low: number | null, high: number | null): number | null {
  return low === null || high === null ? null : (low + high) / 2;
}
