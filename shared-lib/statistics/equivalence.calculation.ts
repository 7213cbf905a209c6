import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber, formatValue, plainDecimals } from '../quantity/format.ts';
import { studentTQuantile, studentTUpperTail } from './distributions.ts';
import { levelSchema } from './level.ts';
import { meanDifference } from './mean-difference.ts';
import { refuseAs } from './refuse-as.ts';

const values = z.array(z.number()).min(2).max(10_000);

const input = z.strictObject({
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

/** Two one-sided tests, each at 1 − level; the interval shown is the one that must lie within the bounds. */
export const equivalenceCalculation = defineCalculation({
  id: 'equivalence',
  version: '1',
  title: 'Equivalence of two materials',
  input,
  compute: (given) => {
    const { design, scale, level } = given;
    const ratio = scale === 'ratio';
    refuseBounds(given);
    const [a, b] = ratio ? [logs(given.a, 'a'), logs(given.b, 'b')] : [given.a, given.b];
    const [lower, upper] = ratio ? [Math.log(given.lowerBound), Math.log(given.upperBound)] : [given.lowerBound, given.upperBound];
    const found = refuseAs('b', given.b.length, () => meanDifference(a, b, design));
    if (found === null) throw new InputError('a', given.a, 'The readings show no spread, so equivalence cannot be judged; check the resolution of the instrument.');
    const { difference, standardError, degreesOfFreedom } = found;
    const pLower = studentTUpperTail((difference - lower) / standardError, degreesOfFreedom);
    const pUpper = studentTUpperTail((upper - difference) / standardError, degreesOfFreedom);
    const p = Math.max(pLower, pUpper);
    const reach = studentTQuantile(level, degreesOfFreedom) * standardError;
    const back = (value: number) => (ratio ? Math.exp(value) : value);
    const n = given.a.length + given.b.length;
    const unit = ratio ? '' : given.unit;
    const result = { value: back(difference), unit, low: back(difference - reach), high: back(difference + reach), level: 2 * level - 1, n, bound: 'exact' as const };
    const { text, intervalText } = formatValue(result, [given.lowerBound, given.upperBound]);
    const bounds = [given.lowerBound, given.upperBound].map((bound) => formatNumber(bound, plainDecimals(bound))).join(' to ');
    const plain = (value: number) => valueWithoutInterval(value, '', n);
    return {
      results: { difference: result, pLower: plain(pLower), pUpper: plain(pUpper), p: plain(p) },
      notes: [
        p <= 1 - level
          ? `Equivalent: the ${ratio ? 'ratio a/b' : 'difference a − b'} of ${text} lies, with its ${intervalText}, within ${bounds}.`
          : `Equivalence is not shown: the ${ratio ? 'ratio a/b' : 'difference a − b'} is ${text}, its ${intervalText}, which is not all within ${bounds}.`,
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

function logs(readings: number[], field: string): number[] {
  const odd = readings.findIndex((value) => value <= 0);
  if (odd !== -1) throw new InputError(`${field}[${odd}]`, readings[odd], `${field}[${odd}] must be more than 0 for a ratio, not ${readings[odd]}.`);
  return readings.map(Math.log);
}
