import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { lastingFigure } from '../statistics/lasting-figure.ts';
import { summariseLasting } from '../statistics/lasting.ts';
import { levelSchema } from '../statistics/level.ts';

const UNIT = 'double rubs';

const input = z.strictObject({
  /** Double rubs (one forward, one back) to break-through, or `brokeThrough: false`: still whole when stopped there. */
  specimens: z.array(z.strictObject({ label: z.string().max(100).optional(), doubleRubs: z.int().min(1).max(100_000), brokeThrough: z.boolean().default(true) })).min(1).max(1000),
  requiredDoubleRubs: z.int().min(1).optional(),
  level: levelSchema,
});
type Input = z.output<typeof input>;

/** Solvent double rubs that a print or coating stands, where rubbing may have been stopped before it broke through. */
export const cureRubsCalculation = defineCalculation({
  id: 'cure-rubs',
  version: '1',
  title: 'Solvent double rubs',
  input,
  compute: (values) => {
    const { specimens, requiredDoubleRubs: required, level } = values;
    const readings = specimens.map(({ doubleRubs, brokeThrough }) => ({ value: doubleRubs, ended: brokeThrough }));
    const { typical, median, least, notes } = summariseLasting(readings, UNIT, level);
    return {
      results: { doubleRubs: typical, median, least, shareStandingPct: required === undefined ? valueWithoutInterval(null, '%', 0) : shareStanding(values, required) },
      table: specimens.map(({ label, doubleRubs, brokeThrough }, index) => ({ specimen: label ?? `${index + 1}`, doubleRubs, brokeThrough })),
      flags: flags(values),
      notes: [
        ...notes,
        'It shows how well the surface stands this solvent, rubbed like this. It does not show conversion: a hard surface over a soft layer passes, and a well cured ink of another chemistry may fail.',
      ],
      figures: [lastingFigure('Double rubs to break-through', UNIT, specimens.map(({ label }, index) => label ?? `${index + 1}`), readings, typical)],
    };
  },
  columns: [
    { key: 'specimen', title: 'Specimen' },
    { key: 'doubleRubs', title: 'Double rubs', decimals: 0 },
    { key: 'brokeThrough', title: 'Broke through' },
  ],
  cautions: ['Solvent: gloves, ventilation, no flame or spark; its safety data sheet and local codes hold.'],
  sources: [
    'ASTM D5402; ASTM D4752 (double rub: one forward and one back; counts as agreed; from memory)',
    'Counts, some only lower bounds: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998); median: E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958) 457',
  ],
});

/** A specimen stopped short of the requirement leaves it open whether it would have stood it: the share is then a range. */
function shareStanding({ specimens, level }: Input, required: number) {
  const n = specimens.length;
  // The rub that breaks through is no longer stood.
  const stands = specimens.filter(({ doubleRubs, brokeThrough }) => (brokeThrough ? doubleRubs > required : doubleRubs >= required)).length;
  const open = specimens.filter(({ doubleRubs, brokeThrough }) => !brokeThrough && doubleRubs < required).length;
  const { low } = clopperPearson(stands, n, level);
  const { high } = clopperPearson(stands + open, n, level);
  return { value: (100 * (stands + open / 2)) / n, unit: '%', low: 100 * low, high: 100 * high, level, n, bound: open === 0 ? ('exact' as const) : ('between' as const) };
}

function flags({ specimens, requiredDoubleRubs: required }: Input): Flag[] {
  return specimens.flatMap(({ label, doubleRubs, brokeThrough }, index) => {
    if (required === undefined || brokeThrough || doubleRubs >= required) return [];
    return [{ code: 'stopped-early', where: `specimens[${index}].doubleRubs`, text: `Specimen ${label ?? index + 1} was stopped whole at ${doubleRubs} double rubs, short of the ${required} asked for.` }];
  });
}
