import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { fitCensoredNormal } from './censored-normal.ts';
import type { Censored, CensoredNormalFit } from './censored-normal.ts';
import { levelSchema } from './level.ts';

/** Either `exact`, or `low` and `high` of which one may be open. */
const observation = z.strictObject({
  exact: z.number().optional(),
  low: z.number().nullable().default(null),
  high: z.number().nullable().default(null),
});

const input = z.strictObject({
  observations: z.array(observation).min(1).max(10_000),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

export const censoredNormalCalculation = defineCalculation({
  id: 'censored-normal',
  version: '1',
  title: 'Mean and spread from exact, bracketed and one-sided readings',
  input,
  compute: ({ observations, unit, level }) => {
    const fit = fitCensoredNormal(observations.map(readObservation), level);
    const plain = (value: number | null, unitOfValue = unit) => valueWithoutInterval(value, unitOfValue, fit.n);
    const hasSpread = fit.standardDeviation !== null && (fit.sdLow !== null || fit.sdHigh !== null);
    return {
      results: {
        mean: meanOf(fit, unit, level),
        standardDeviation: { ...plain(fit.standardDeviation), low: fit.sdLow, high: fit.sdHigh, level: hasSpread ? level : null },
        logLikelihood: plain(fit.logLikelihood, ''),
      },
      notes: [fit.reason, ...openSideNotes(fit)],
    };
  },
  columns: [],
  cautions: [],
  sources: [
    'Maximum likelihood and profile interval: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapters 7 and 8',
    'The cut-off of the profile interval is the one that gives the exact t interval for uncensored readings.',
  ],
});

function readObservation(given: z.output<typeof observation>, index: number): Censored {
  const { exact, low, high } = given;
  const field = `observations[${index}]`;
  if (exact !== undefined) {
    if (low !== null || high !== null) throw new InputError(field, given, `${field} is either exact or has low and high, not both.`);
    return { low: exact, high: exact };
  }
  if (low === null && high === null) throw new InputError(field, given, `${field} needs exact, low or high: a reading open on both sides says nothing.`);
  if (low !== null && high !== null && low > high) throw new InputError(field, given, `${field} has low ${low} above high ${high}.`);
  return { low, high };
}

function meanOf(fit: CensoredNormalFit, unit: string, level: number): ResultValue {
  const { n, low, high, mean, status } = fit;
  if (status === 'estimated') return { value: mean, unit, low, high, level: low === null && high === null ? null : level, n, bound: 'exact' };
  const limits = { unit, low, high, level: null, n };
  if (low !== null && high !== null) return { ...limits, value: low === high ? low : low + (high - low) / 2, bound: 'between' };
  if (low !== null) return { ...limits, value: low, bound: 'at-least' };
  if (high !== null) return { ...limits, value: high, bound: 'at-most' };
  return { ...limits, value: null, bound: 'between' };
}

function openSideNotes({ status, n, low, high }: CensoredNormalFit): string[] {
  if (status !== 'estimated' || n === 1 || (low !== null && high !== null)) return [];
  return ['The readings do not bound the mean on a side without limit; more exact readings are needed there.'];
}
