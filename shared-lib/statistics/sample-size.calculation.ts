import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import { equivalencePower } from './equivalence-power.ts';
import { levelSchema } from './level.ts';
import { oneWayPower } from './one-way-power.ts';
import { specimensForPassRate } from './pass-rate.ts';
import { smallestCount } from './smallest-count.ts';
import { tPower } from './t-power.ts';
import { twoSharePower } from './two-share-power.ts';

const common = { level: levelSchema, power: z.number().min(0.5).max(0.9999).default(0.9) };
const measured = { ...common, difference: z.number().positive(), standardDeviation: z.number().positive(), unit: z.string().max(20).default('') };
const share = z.number().gt(0).lt(1);

/** The fields that belong to each design. */
const input = z.discriminatedUnion('design', [
  z.strictObject({ design: z.literal('two-sample'), ...measured }),
  z.strictObject({ design: z.literal('paired'), ...measured }),
  z.strictObject({ design: z.literal('one-sample'), ...measured }),
  /** `difference` between the extreme two of `groups` trials, the others half-way between. */
  z.strictObject({ design: z.literal('one-way'), groups: z.int().min(2).max(200), ...measured }),
  /** `difference` is the margin on either side; `trueDifference` what there really is. */
  z.strictObject({ design: z.literal('equivalence'), trueDifference: z.number().default(0), ...measured }),
  z.strictObject({ design: z.literal('two-shares'), shareA: share, shareB: share, ...common }),
  z.strictObject({ design: z.literal('pass-rate'), passRate: share, failures: z.int().min(0).max(1000).default(0), level: levelSchema }),
]);

type Input = z.output<typeof input>;

const MOST = 100_000;
/** Two readings tell such a difference; larger ones are slips of a unit, and cost the non-central F distribution more terms than can be summed. */
const LARGEST_DIFFERENCE_IN_SD = 1000;

/** Readings per group (pairs, specimens) that a question takes. `perGroup` is whole; the power it reaches stands beside. */
export const sampleSizeCalculation = defineCalculation({
  id: 'sample-size',
  version: '1',
  title: 'How many readings it takes',
  input,
  compute: (given) => {
    if (given.design === 'pass-rate') return passRate(given);
    const powerOf = powerFor(given);
    const perGroup = smallestCount(powerOf, given.power, 2, MOST);
    const whole = (value: number | null, unit = '') => valueWithoutInterval(value, unit, perGroup ?? 0);
    if (perGroup === null) {
      return { results: { perGroup: { ...whole(MOST), bound: 'at-least' }, power: whole(null) }, notes: [`It takes more than ${MOST} readings; ask for a larger difference, or make the scatter smaller.`] };
    }
    const power = powerOf(perGroup);
    return {
      results: { perGroup: whole(perGroup), power: whole(power) },
      notes: [sentence(given, perGroup, power), ...caveats(given)],
    };
  },
  columns: [],
  cautions: [],
  sources: [
    'J. Cohen, Statistical Power Analysis, 2nd ed. (1988), by the non-central t and F distributions',
    'Equivalence: D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657',
    'Pass rate: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404',
  ],
});

function powerFor(given: Exclude<Input, { design: 'pass-rate' }>): (n: number) => number {
  const alpha = 1 - given.level;
  if (given.design !== 'two-shares' && given.difference > LARGEST_DIFFERENCE_IN_SD * given.standardDeviation) {
    throw new InputError('difference', given.difference, `difference must be at most ${LARGEST_DIFFERENCE_IN_SD} times the standard deviation of ${given.standardDeviation}, not ${given.difference}; check the units of both.`);
  }
  switch (given.design) {
    case 'one-way': {
      const between = given.difference ** 2 / 2 / (given.groups - 1);
      return (n) => oneWayPower(n, given.groups, between, given.standardDeviation ** 2, alpha);
    }
    case 'equivalence':
      if (Math.abs(given.trueDifference) >= given.difference) {
        throw new InputError('trueDifference', given.trueDifference, `trueDifference must lie within the margin of ${given.difference}: what is not equivalent cannot be shown to be.`);
      }
      return (n) => equivalencePower(n, given.trueDifference, -given.difference, given.difference, given.standardDeviation, alpha);
    case 'two-shares':
      if (given.shareA === given.shareB) throw new InputError('shareB', given.shareB, 'shareB must differ from shareA: there is no difference to find.');
      return (n) => twoSharePower(n, given.shareA, given.shareB, alpha);
    default:
      return (n) => tPower(n, given.difference, given.standardDeviation, alpha, given.design);
  }
}

function passRate({ passRate, failures, level }: Extract<Input, { design: 'pass-rate' }>) {
  const n = specimensForPassRate(passRate, failures, level);
  const allowed = failures === 0 ? 'all pass' : `at most ${failures} of them fail`;
  return {
    results: { perGroup: valueWithoutInterval(n, '', n) },
    notes: [`If ${allowed}, ${n} specimens show with ${percent(level)} confidence that at least ${percent(passRate)} pass.`, 'Specimens must be drawn so that each stands for the whole lot.'],
  };
}

function sentence(given: Exclude<Input, { design: 'pass-rate' }>, n: number, power: number): string {
  const chance = `with a chance of ${percent(Number(power.toPrecision(4)))}`;
  if (given.design === 'two-shares') return `${n} specimens per group tell ${percent(given.shareA)} from ${percent(given.shareB)} ${chance}.`;
  const size = `${formatNumber(given.difference, plainDecimals(given.difference))}${given.unit && ` ${given.unit}`}`;
  switch (given.design) {
    case 'equivalence':
      return `${n} readings per group prove equivalence within ±${size} ${chance}, if the true difference is ${given.trueDifference}.`;
    case 'paired':
      return `${n} pairs find a true difference of ${size} ${chance}.`;
    case 'one-sample':
      return `${n} readings find a true difference of ${size} from a fixed value ${chance}.`;
    case 'one-way':
      return `${n} readings per trial find that ${given.groups} trials differ, of which two lie ${size} apart, ${chance}.`;
    default:
      return `${n} readings per group find a true difference of ${size} ${chance}.`;
  }
}

function caveats(given: Exclude<Input, { design: 'pass-rate' }>): string[] {
  if (given.design === 'two-shares') return ['By the normal approximation; for shares near 0 or 100 % take a few more.'];
  return [
    given.design === 'paired' ? 'The standard deviation is that of the differences within pairs.' : 'The standard deviation is that of readings within one group; one taken from few readings may be off by half.',
  ];
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(12))} %`;
}
