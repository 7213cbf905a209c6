import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { deltaEab } from '../colour/delta-e-ab.ts';
import { labSchema, type Lab } from '../colour/lab.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { deltaEGreyScale, stainingGrade } from './grey-scale-staining.ts';

const readings = z.union([labSchema, z.array(labSchema).min(1).max(1000)]);

const input = z.strictObject({
  /** The white cloth, film or paper before; one reading may stand for all. */
  before: readings,
  /** The same after rubbing, bleeding or migration. */
  after: readings,
  level: levelSchema,
});

/** A scale for staining is meant for whites; beyond this lightness nothing is one. */
const leastLightness = 70;

export const stainingCalculation = defineCalculation({
  id: 'staining',
  version: '1',
  title: 'Staining of a white: grey-scale grade',
  input,
  compute,
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'deltaEab', title: 'ΔE*ab', decimals: 2 },
    { key: 'deltaEGS', title: 'ΔE GS', decimals: 2 },
    { key: 'grade', title: 'Grade' },
  ],
  cautions: [],
  sources: ['ISO 105-A04 (instrumental staining; from memory and excerpts)', 'ISO 105-A03 (steps of the grey scale for staining; from memory)'],
});

function compute({ before, after, level }: z.output<typeof input>): Outcome {
  const [whites, stained] = [listOf(before), listOf(after)];
  if (whites.length !== 1 && whites.length !== stained.length) {
    throw new InputError('before', whites.length, `before has ${whites.length} readings and after ${stained.length}; give one for each, or one for all.`);
  }
  const pairs = stained.map((one, index) => ({ white: whites[whites.length === 1 ? 0 : index]!, one }));
  const differences = pairs.map(({ white, one }) => deltaEGreyScale(white, one));
  const mean = meanOfReplicates(differences, '', level, 0);
  const { grade, text } = stainingGrade(mean.value!);
  return {
    results: {
      deltaEGS: mean,
      grade: { ...mean, value: grade, text, low: mean.high === null ? null : stainingGrade(mean.high).grade, high: mean.low === null ? null : stainingGrade(mean.low).grade },
    },
    table: pairs.map(({ white, one }, index) => ({ reading: index + 1, deltaEab: deltaEab(white, one), deltaEGS: differences[index]!, grade: stainingGrade(differences[index]!).text })),
    flags: flagsOf(pairs),
    figures: [replicatesFigure('staining-readings', 'ΔE GS', '', differences, mean)],
    notes: ['L*, a*, b* under D65 for the 10° observer, or as the customer states; before and after alike.', ...(pairs.length === 1 ? ['One reading gives no interval.'] : [])],
  };
}

function listOf(value: Lab | Lab[]): Lab[] {
  return (Array.isArray(value[0]) ? value : [value]) as Lab[];
}

function flagsOf(pairs: { white: Lab; one: Lab }[]): Flag[] {
  return pairs.flatMap(({ white, one }, index): Flag[] => {
    if (white[0] < leastLightness) return [{ code: 'no-white', where: `before[${index}]`, text: `L* ${white[0]} is no white; the scale for staining is meant for whites. Use the scale for change.` }];
    return one[0] > white[0] + 1 ? [{ code: 'lighter', where: `after[${index}]`, text: `L* rose from ${white[0]} to ${one[0]}: before and after may be exchanged.` }] : [];
  });
}
