import type { Flag } from '../calculation/result.ts';
import { censoredDifference } from './censored-difference.ts';
import { censoredMean } from './censored-mean.ts';
import { fitCensoredNormal } from './censored-normal.ts';
import type { Censored } from './censored-normal.ts';
import { logRankTest } from './log-rank.ts';
import { allPairs } from './pair-comparison.ts';
import { sidakP, sidakTail } from './tamhane.ts';
import type { TrialComparison, TrialPair } from './trial-comparison.ts';

export interface BoundedTrial {
  name: string;
  readings: Censored[];
}

/**
 * Compares trials in which some readings are only bounds (a film that tore, a fluid that held): differences of means by
 * profile likelihood, all pairs together by Šidák; a pair whose means cannot be estimated, by the log-rank test where
 * all bounds are lower ones.
 */
export function compareBounded(trials: readonly BoundedTrial[], control: number | null, level: number): TrialComparison {
  const places = control === null ? allPairs(trials.length) : trials.flatMap((_, a): [number, number][] => (a === control ? [] : [[a, control]]));
  const fits = trials.map(({ readings }) => fitCensoredNormal(readings, level));
  const means = trials.map(({ readings }, g) => censoredMean(readings, fits[g]));
  const each = 1 - sidakTail(1 - level, places.length);
  const flags: Flag[] = [];
  const pairs = places.map(([a, b]): TrialPair => {
    const [first, second] = [means[a], means[b]];
    if (first && second) {
      const { difference, interval, p } = censoredDifference(first, second);
      return { a, b, difference, ...interval(each), p: sidakP(p(0), places.length) };
    }
    const ranks = logRank([trials[a]!, trials[b]!]);
    return { a, b, difference: null, low: null, high: null, p: ranks === null ? null : sidakP(ranks, places.length) };
  });
  fits.forEach((fit, index) => {
    const { name } = trials[index]!;
    const where = `groups[${index}]`;
    if (fit.status !== 'estimated') flags.push({ code: 'mean-only-bounded', where, text: `${name}: ${fit.reason}` });
    else if (fit.standardDeviation === 0 && fit.n > 1) flags.push({ code: 'no-spread', where, text: `${name}: the brackets are too coarse to show any spread, so it cannot be compared; read in finer steps, or more of them.` });
    else if (fit.n === 1) flags.push({ code: 'one-reading', where, text: `${name} has one reading and no spread of its own, so it cannot be compared with others of which some readings are only bounds.` });
  });
  const spreads = fits.flatMap(({ standardDeviation, n }) => (standardDeviation && n > 1 ? [(standardDeviation ** 2 * n) / (n - 1)] : []));
  const overall = logRank(trials);
  return {
    levels: fits.map(({ status, mean, low, high }) => ({ value: status === 'estimated' ? mean : null, low, high })),
    pairs,
    method: 'profile likelihood, Šidák',
    f: null,
    p: overall,
    welchF: null,
    welchP: null,
    spread: spreads.length > 0 ? Math.sqrt(spreads.reduce((sum, value) => sum + value, 0) / spreads.length) : null,
    notes: [
      'Some readings are only bounds; they count as such, by likelihood, and are neither dropped nor taken as the value itself.',
      overall === null ? 'An overall test needs readings that are exact or lower bounds.' : 'Overall: log-rank test, with lower bounds counted as bounds.',
    ],
    flags,
  };
}

/** p of the log-rank test; `null` where a reading has an upper bound other than itself, or no test can be had. */
function logRank(trials: readonly BoundedTrial[]): number | null {
  if (trials.some(({ readings }) => readings.some(({ low, high }) => low === null || (high !== null && high !== low)))) return null;
  return logRankTest(trials.map(({ readings }) => readings.map(({ low, high }) => ({ time: low!, event: high !== null }))))?.p ?? null;
}
