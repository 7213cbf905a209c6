import type { ResultValue } from '../calculation/result.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { kaplanMeier } from '../statistics/kaplan-meier.ts';
import { summarise } from '../statistics/summarise.ts';
import { isLowerBound, type FailureMode } from './failure-mode.ts';

export interface BondSpecimen {
  /** N/15 mm. */
  strength: number;
  mode: FailureMode;
}

const UNIT = 'N/15 mm';

/**
 * Mean, standard deviation, median, minimum and share of torn specimens. A specimen whose film gave way is a lower bound
 * (right-censored): it raises the mean and is never averaged as if it were the bond strength.
 * @param specimens at least one, strengths finite.
 * @returns the results by name, and one sentence for each that could not be given as usual.
 */
export function bondStatistics(specimens: readonly BondSpecimen[], level: number): { results: Record<string, ResultValue>; notes: string[] } {
  const n = specimens.length;
  const strengths = specimens.map(({ strength }) => strength);
  const torn = specimens.filter(({ mode }) => isLowerBound(mode)).length;
  const { mean, standardDeviation, notes } = torn === 0 ? ordinary(strengths, level) : censored(specimens, level);
  const share = clopperPearson(torn, n, level);
  return {
    results: {
      mean,
      standardDeviation,
      median: medianOf(specimens, level, notes),
      minimum: minimumOf(specimens),
      shareTorn: { value: torn / n, unit: '', ...share, level, n, bound: 'exact' },
    },
    notes,
  };
}

interface Centre {
  mean: ResultValue;
  standardDeviation: ResultValue;
  notes: string[];
}

function ordinary(strengths: number[], level: number): Centre {
  const n = strengths.length;
  const { mean, standardDeviation, low, high } = summarise(strengths, level);
  // With every reading exact the limits of the spread are those of chi-square.
  const { sdLow, sdHigh } = fitCensoredNormal(strengths.map((strength) => ({ low: strength, high: strength })), level);
  return {
    mean: { value: mean, unit: UNIT, low, high, level: low === null ? null : level, n, bound: 'exact' },
    standardDeviation: { value: standardDeviation, unit: UNIT, low: sdLow, high: sdHigh, level: sdLow === null ? null : level, n, bound: 'exact' },
    notes: n === 1 ? ['One specimen shows no spread: there is no interval and no standard deviation.'] : ['No film gave way: ordinary mean, standard deviation with n − 1, t interval of the mean.'],
  };
}

function censored(specimens: readonly BondSpecimen[], level: number): Centre {
  const n = specimens.length;
  const fit = fitCensoredNormal(specimens.map(({ strength, mode }) => ({ low: strength, high: isLowerBound(mode) ? null : strength })), level);
  if (fit.status === 'estimated') {
    return {
      mean: { value: fit.mean, unit: UNIT, low: fit.low, high: fit.high, level, n, bound: 'exact' },
      standardDeviation: { value: fit.standardDeviation, unit: UNIT, low: fit.sdLow, high: fit.sdHigh, level, n, bound: 'exact' },
      notes: ['Where the film gave way the bond is stronger than the reading: mean and standard deviation by maximum likelihood for a normal with lower bounds, profile-likelihood intervals.'],
    };
  }
  return {
    mean: atLeast(summarise(specimens.map(({ strength }) => strength), level).mean, n),
    standardDeviation: { value: null, unit: UNIT, low: null, high: null, level: null, n, bound: 'exact' },
    notes: ['The readings allow no estimate of the spread, because too few bonds failed before their film: the mean of these specimens is at least the mean of their readings, and there is no standard deviation.'],
  };
}

/**
 * Kaplan–Meier median, which is the ordinary one where no film gave way. When the curve does not come down to one half,
 * the median of these specimens is at least the median of their readings.
 */
function medianOf(specimens: readonly BondSpecimen[], level: number, notes: string[]): ResultValue {
  const n = specimens.length;
  const strengths = specimens.map(({ strength }) => strength);
  const { value, low, high } = kaplanMeier(strengths, specimens.map(({ mode }) => !isLowerBound(mode)), level).median;
  if (value === null) {
    notes.push('Half of the bonds or more outlasted their film, so the median of these specimens is at least the median of their readings.');
    return atLeast(summarise(strengths, level).median, n);
  }
  if (low === null || high === null) notes.push('The readings are too few for a full interval of the median: the open side is left empty.');
  return { value, unit: UNIT, low, high, level: low === null && high === null ? null : level, n, bound: 'exact' };
}

/** The weakest specimen. One that tore lowest leaves it open how strong its bond is, up to the weakest bond that failed. */
function minimumOf(specimens: readonly BondSpecimen[]): ResultValue {
  const n = specimens.length;
  const lowest = (some: readonly BondSpecimen[]) => Math.min(...some.map(({ strength }) => strength));
  const smallest = lowest(specimens);
  const weakestBond = lowest(specimens.filter(({ mode }) => !isLowerBound(mode)));
  if (weakestBond === smallest) return { value: smallest, unit: UNIT, low: null, high: null, level: null, n, bound: 'exact' };
  if (weakestBond === Infinity) return atLeast(smallest, n);
  return { value: (smallest + weakestBond) / 2, unit: UNIT, low: smallest, high: weakestBond, level: null, n, bound: 'between' };
}

function atLeast(value: number, n: number): ResultValue {
  return { value, unit: UNIT, low: value, high: null, level: null, n, bound: 'at-least' };
}
