import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber, formatValue, plainDecimals } from '../quantity/format.ts';
import { censoredMean } from './censored-mean.ts';
import type { CensoredMean } from './censored-mean.ts';
import { fitCensoredNormal } from './censored-normal.ts';
import type { Censored } from './censored-normal.ts';
import { levelSchema } from './level.ts';
import { meanDifference } from './mean-difference.ts';
import { observationSchema, readObservation } from './observation.ts';
import { refuseAs } from './refuse-as.ts';
import { twoOneSidedTests, twoOneSidedTestsOfBounded } from './two-one-sided.ts';
import type { TwoOneSided } from './two-one-sided.ts';

const values = z.array(observationSchema).min(2).max(10_000);

const input = z.strictObject({
  /** Readings; one that is only a bound as `{atLeast}`, `{atMost}` or `{low, high}`. */
  a: values,
  b: values,
  /** Bounds of a − b within which the two count as equivalent; for `scale: 'ratio'`, of a/b. */
  lowerBound: z.number(),
  upperBound: z.number(),
  design: z.enum(['welch', 'pooled', 'paired']).default('welch'),
  scale: z.enum(['difference', 'ratio']).default('difference'),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

/**
 * Two one-sided tests, each at 1 − level; the interval shown is the one that must lie within the bounds. Where readings
 * are only bounds, both come from the profile likelihood of the difference: `censoredDifference`.
 */
export const equivalenceCalculation = defineCalculation({
  id: 'equivalence',
  version: '1',
  title: 'Equivalence of two materials',
  input,
  compute: (given) => {
    const { level, scale } = given;
    const ratio = scale === 'ratio';
    refuseBounds(given);
    const found = judge(given);
    const p = Math.max(found.pLower, found.pUpper);
    const back = (value: number | null) => (ratio && value !== null ? Math.exp(value) : value);
    const n = given.a.length + given.b.length;
    const unit = ratio ? '' : given.unit;
    const result = { value: back(found.difference), unit, low: back(found.low), high: back(found.high), level: 2 * level - 1, n, bound: 'exact' as const };
    const { text, intervalText } = formatValue(result, [given.lowerBound, given.upperBound]);
    const bounds = [given.lowerBound, given.upperBound].map((bound) => formatNumber(bound, plainDecimals(bound))).join(' to ');
    const plain = (value: number) => valueWithoutInterval(value, '', n);
    return {
      results: { difference: result, pLower: plain(found.pLower), pUpper: plain(found.pUpper), p: plain(p) },
      notes: [
        p <= 1 - level
          ? `Equivalent: the ${ratio ? 'ratio a/b' : 'difference a − b'} of ${text} lies, with its ${intervalText}, within ${bounds}.`
          : `Equivalence is not shown: the ${ratio ? 'ratio a/b' : 'difference a − b'} is ${text}, its ${intervalText}, which is not all within ${bounds}.`,
        ...(isExact(given) ? [] : ['Some readings are only bounds; they count as such, by the profile likelihood of the difference.']),
        ...(p <= 1 - level ? [] : ['Not shown does not mean different: more readings narrow the interval.']),
      ],
    };
  },
  columns: [],
  cautions: [],
  sources: ['D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657'],
});

function refuseBounds({ lowerBound, upperBound, scale }: z.output<typeof input>): void {
  if (lowerBound >= upperBound) throw new InputError('lowerBound', lowerBound, `lowerBound must lie below upperBound ${upperBound}, not at ${lowerBound}.`);
  if (scale === 'ratio' && lowerBound <= 0) throw new InputError('lowerBound', lowerBound, `The bounds of a ratio must be more than 0, not ${lowerBound}.`);
}

type Given = z.output<typeof input>;

function isExact({ a, b }: Given): boolean {
  return [...a, ...b].every((value) => typeof value === 'number');
}

function judge(given: Given): TwoOneSided {
  const { design, level, scale } = given;
  const onScale = (value: number) => (scale === 'ratio' ? Math.log(value) : value);
  const bounds = { lower: onScale(given.lowerBound), upper: onScale(given.upperBound) };
  const read = (field: 'a' | 'b') => given[field].map((value, index): Censored => {
    const reading = readObservation(value, `${field}[${index}]`);
    if (scale === 'ratio' && ((reading.low ?? 1) <= 0 || (reading.high ?? 1) <= 0)) {
      throw new InputError(`${field}[${index}]`, value, `${field}[${index}] must be more than 0 for a ratio.`);
    }
    return { low: reading.low === null ? null : onScale(reading.low), high: reading.high === null ? null : onScale(reading.high) };
  });
  const [a, b] = [read('a'), read('b')];
  if (isExact(given)) {
    const numbers = (readings: Censored[]) => readings.map(({ low }) => low!);
    const found = refuseAs('b', given.b.length, () => meanDifference(numbers(a), numbers(b), design));
    if (found === null) throw new InputError('a', given.a, 'The readings show no spread, so equivalence cannot be judged; check the resolution of the instrument.');
    return twoOneSidedTests(found, bounds, level);
  }
  if (design !== 'welch') throw new InputError('design', design, 'Readings that are only bounds are compared with separate spreads alone: leave out design, or give exact readings.');
  return twoOneSidedTestsOfBounded(estimated(a, 'a'), estimated(b, 'b'), bounds, level);
}

/** @throws InputError where the readings bound the mean on one side only, or show no spread */
function estimated(readings: Censored[], field: 'a' | 'b'): CensoredMean {
  const fit = fitCensoredNormal(readings);
  const mean = censoredMean(readings, fit);
  if (mean === null) throw new InputError(field, null, `${fit.reason} So equivalence of ${field} can be neither shown nor ruled out; add readings that are exact or within limits on both sides.`);
  return mean;
}
