import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber } from '../quantity/format.ts';
import { nearerIndex, spreadIndex, targetIndex } from './capability.ts';
import type { CapabilityIndex } from './capability.ts';
import { controlLimits } from './control-limits.ts';
import { levelSchema } from './level.ts';
import { refuseAs } from './refuse-as.ts';
import { runSignals } from './run-rules.ts';
import { shapiroWilk } from './shapiro-wilk.ts';
import { summarise } from './summarise.ts';

const input = z.strictObject({
  /** Readings in order of time. */
  values: z.array(z.number()).min(2).max(10_000),
  lowerLimit: z.number().optional(),
  upperLimit: z.number().optional(),
  target: z.number().optional(),
  /** Readings taken together, in the order of `values`; 1: neighbouring readings tell the short-term spread. */
  subgroupSize: z.int().min(1).max(25).default(1),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

const NOT_NORMAL = 0.01;
const FEW = 30;

/**
 * cp and cpk stand on the short-term spread (moving ranges, or ranges within subgroups), pp and ppk on the standard
 * deviation of all readings, cpm on their mean square about the target.
 */
export const capabilityCalculation = defineCalculation({
  id: 'capability',
  version: '1',
  title: 'Capability against limits',
  input,
  compute: ({ values, lowerLimit, upperLimit, target, subgroupSize, unit, level }) => {
    const [lower, upper] = [lowerLimit ?? null, upperLimit ?? null];
    if (lower === null && upper === null) throw new InputError('lowerLimit', null, 'Capability needs lowerLimit, upperLimit or both.');
    if (lower !== null && upper !== null && lower >= upper) throw new InputError('lowerLimit', lower, `lowerLimit must lie below upperLimit ${upper}, not at ${lower}.`);
    if (values.length % subgroupSize !== 0) throw new InputError('subgroupSize', subgroupSize, `${values.length} values cannot be split into subgroups of ${subgroupSize}.`);
    const { n, mean, standardDeviation } = summarise(values);
    if (!standardDeviation) throw new InputError('values', values.length, 'All readings are equal; without scatter a capability has no finite value. Check the resolution of the instrument.');
    const subgroups = Array.from({ length: n / subgroupSize }, (_, i) => values.slice(i * subgroupSize, (i + 1) * subgroupSize));
    const kind = subgroupSize === 1 ? 'individuals' : 'xbar-s';
    const limits = refuseAs('subgroupSize', subgroupSize, () => controlLimits(subgroups, kind));
    const { sigma } = limits;
    const shortDf = subgroupSize === 1 ? movingRangeDf(n) : subgroups.length * (subgroupSize - 1);
    const both = lower !== null && upper !== null;
    const of = (index: CapabilityIndex | null): ResultValue => (index === null ? valueWithoutInterval(null, '', n) : { ...index, unit: '', level, n, bound: 'exact' });
    const short = sigma > 0;
    const aim = target ?? (both ? (lower + upper) / 2 : null);
    return {
      results: {
        cp: of(both && short ? spreadIndex(lower, upper, sigma, shortDf, level) : null),
        cpk: of(short ? nearerIndex(lower, upper, mean, sigma, n, shortDf, level) : null),
        pp: of(both ? spreadIndex(lower, upper, standardDeviation, n - 1, level) : null),
        ppk: of(nearerIndex(lower, upper, mean, standardDeviation, n, n - 1, level)),
        cpm: of(both && aim !== null ? targetIndex(lower, upper, aim, mean, standardDeviation, n, level) : null),
        mean: valueWithoutInterval(mean, unit, n),
        sigmaWithin: valueWithoutInterval(sigma, unit, n),
        sigmaOverall: valueWithoutInterval(standardDeviation, unit, n),
      },
      flags: flagsOf(values, runSignals(limits.level).length),
      notes: [
        `cp and cpk use the short-term spread from ${subgroupSize === 1 ? 'neighbouring readings' : 'within subgroups'}, pp and ppk that of all readings; where they differ much, the process drifts.`,
        ...(both ? [] : ['With one limit only cpk and ppk have a value.']),
        ...(both && target === undefined ? ['No target was given; cpm takes the middle between the limits.'] : []),
        ...(short ? [] : ['Neighbouring readings do not differ, so cp and cpk have no finite value.']),
        ...(n < FEW ? [`${n} readings leave capability unsure: go by the lower end of its interval.`] : []),
      ],
    };
  },
  columns: [],
  cautions: [],
  sources: ['ISO 22514-2; intervals: A. F. Bissell, Appl. Stat. 39 (1990) 331; R. A. Boyles, J. Qual. Technol. 23 (1991) 17'],
});

function flagsOf(values: number[], signals: number): Flag[] {
  const flags: Flag[] = [];
  const shape = shapiroWilk(values);
  if (shape && shape.p < NOT_NORMAL) flags.push({ code: 'not-normal', where: 'values', text: `The readings are unlikely to be normal (Shapiro–Wilk p = ${formatNumber(shape.p, 4)}); the indices then do not tell the share outside the limits.` });
  if (signals > 0) flags.push({ code: 'not-in-control', where: 'values', text: `The control chart of these readings shows ${signals} pattern${signals > 1 ? 's' : ''} of a process out of control; capability says little until their causes are found.` });
  return flags;
}

/** Degrees of freedom that a standard deviation from n − 1 moving ranges is worth, from the variance of their mean. */
function movingRangeDf(n: number): number {
  const m = n - 1;
  const own = 2 - 4 / Math.PI;
  const neighbours = (4 / Math.PI) * (Math.sqrt(3) / 2 + Math.PI / 12 - 1);
  const variance = (m * own + 2 * (m - 1) * neighbours) / (m * m) / (4 / Math.PI);
  return 1 / (2 * variance);
}
