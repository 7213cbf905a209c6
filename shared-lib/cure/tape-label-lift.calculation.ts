import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';

const input = z.strictObject({
  /** Area under the tape or label from which ink came off, and whether its adhesive still sticks to bare film afterwards. */
  specimens: z.array(z.strictObject({ label: z.string().max(100).optional(), liftedPct: z.number().min(0).max(100), adhesiveSticks: z.boolean().optional() })).min(1).max(1000),
  level: levelSchema,
});
type Input = z.output<typeof input>;

/** Ink lifted by a tape or label pressed on and pulled off, and what it left on the adhesive. */
export const tapeLabelLiftCalculation = defineCalculation({
  id: 'tape-label-lift',
  version: '1',
  title: 'Tape-and-label lift',
  input,
  compute: ({ specimens, level }) => {
    const lifted = specimens.map(({ liftedPct }) => liftedPct);
    const mean = within(meanOfReplicates(lifted, '%', level, 0));
    const judged = specimens.filter(({ adhesiveSticks }) => adhesiveSticks !== undefined);
    const names = specimens.map(({ label }, index) => label ?? `${index + 1}`);
    return {
      results: {
        liftedPct: mean,
        worstPct: valueWithoutInterval(Math.max(...lifted), '%', lifted.length),
        specimensLiftedPct: share(lifted.filter((pct) => pct > 0).length, lifted.length, level),
        adhesiveDeadPct: share(judged.filter(({ adhesiveSticks }) => !adhesiveSticks).length, judged.length, level),
      },
      table: specimens.map(({ liftedPct, adhesiveSticks = null }, index) => ({ specimen: names[index]!, liftedPct, adhesiveSticks })),
      flags: flags(specimens, names),
      notes: [
        ...(specimens.length === 1 ? ['One specimen gives no interval.'] : []),
        ...(judged.length === 0 ? ['Whether the adhesive still sticks was not looked at.'] : []),
        'It shows whether the weakest layer of the print holds against this adhesive and pull. It cannot tell poor cure from poor adhesion to the film: look where the print split.',
        'An adhesive that no longer sticks took up something that is not bound: uncured ink, but also wax, silicone or slip agent.',
      ],
      figures: [replicatesFigure('lifted', 'Area lifted', '%', lifted, mean, names)],
    };
  },
  columns: [
    { key: 'specimen', title: 'Specimen' },
    { key: 'liftedPct', title: 'Area lifted', unit: '%', decimals: 1 },
    { key: 'adhesiveSticks', title: 'Adhesive still sticks' },
  ],
  cautions: [],
  sources: ['ASTM F2252 (tape on ink; no limits of its own), used soon after cure: common practice', 'Exact interval of a share: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404'],
});

/** An area cannot exceed the whole. */
function within(mean: ResultValue): ResultValue {
  return { ...mean, high: mean.high === null ? null : Math.min(100, mean.high) };
}

function share(count: number, n: number, level: number): ResultValue {
  if (n === 0) return valueWithoutInterval(null, '%', 0);
  const { low, high } = clopperPearson(count, n, level);
  return { value: (100 * count) / n, unit: '%', low: 100 * low, high: 100 * high, level, n, bound: 'exact' };
}

function flags(specimens: Input['specimens'], names: readonly string[]): Flag[] {
  return specimens.flatMap(({ liftedPct, adhesiveSticks }, index) => {
    if (liftedPct > 0 || adhesiveSticks !== false) return [];
    return [{ code: 'clean-but-dead', where: `specimens[${index}].adhesiveSticks`, text: `Specimen ${names[index]} shows no lift, but its adhesive no longer sticks: something that is not bound has gone over to it, so the tape never pulled.` }];
  });
}
