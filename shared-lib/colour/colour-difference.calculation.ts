import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { abFigure } from './ab-figure.ts';
import { cmcSchema, differenceFormulaNames, differenceFormulas, toleranceSchema } from './difference-formulas.ts';
import { differenceInWords } from './difference-words.ts';
import { driftFigure } from './drift-figure.ts';
import { driftRate } from './drift-rate.ts';
import { labDifference } from './lab-difference.ts';
import { labSchema, type Lab } from './lab.ts';
import { holdToOneLight, lightInWords, measurementLightSchema } from './measurement-light.ts';
import { realColourFlags } from './real-colour-flags.ts';

const input = z.strictObject({
  reference: labSchema,
  /** One reading, or readings over the print or the run in their order. */
  sample: z.union([labSchema, z.array(labSchema).min(1).max(5000)]),
  labels: z.array(z.string().max(100)).max(5000).default([]),
  /** Where in the run each reading was taken. */
  run: z.array(z.number().min(0).max(1e9)).max(5000).optional(),
  runUnit: z.enum(['m', 'min', 'prints']).default('m'),
  cmc: cmcSchema,
  tolerance: toleranceSchema.optional(),
  referenceLight: measurementLightSchema.optional(),
  sampleLight: measurementLightSchema.optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;

export const colourDifferenceCalculation = defineCalculation({
  id: 'colour-difference',
  version: '2',
  title: 'Colour difference',
  input,
  compute,
  columns: [
    { key: 'reading', title: 'Reading' },
    ...differenceFormulaNames.map((key) => ({ key, title: differenceFormulas[key].title, decimals: 2 })),
    { key: 'deltaL', title: 'ΔL*', decimals: 2 },
    { key: 'deltaA', title: 'Δa*', decimals: 2 },
    { key: 'deltaB', title: 'Δb*', decimals: 2 },
    { key: 'deltaC', title: 'ΔC*', decimals: 2 },
    { key: 'deltaH', title: 'ΔH*', decimals: 2 },
  ],
  cautions: [],
  sources: [
    'ISO/CIE 11664-4 (ΔE*ab, ΔL*, ΔC*, ΔH*)',
    'CIE 116-1995 (ΔE94, graphic-arts weights)',
    'ISO 105-J03 (CMC l:c)',
    'ISO/CIE 11664-6; Sharma, Wu & Dalal 2005, Color Res. Appl. 30, 21–30 (ΔE00)',
  ],
});

function compute(given: Given): Outcome {
  const { reference, cmc, tolerance, level } = given;
  holdToOneLight(given.referenceLight, given.sampleLight);
  const samples = (Array.isArray(given.sample[0]) ? given.sample : [given.sample]) as Lab[];
  if (given.run !== undefined && given.run.length !== samples.length) throw new InputError('run', given.run.length, `run has ${given.run.length} places for ${samples.length} readings; each reading needs one.`);
  const label = (index: number) => given.labels[index] ?? `${index + 1}`;
  const rows = samples.map((sample, index) => ({
    reading: label(index),
    ...Object.fromEntries(differenceFormulaNames.map((name) => [name, differenceFormulas[name].of(reference, sample, cmc)])),
    ...labDifference(reference, sample),
    deltaA: sample[1] - reference[1],
    deltaB: sample[2] - reference[2],
  })) as Row[];
  const mean = (key: Exclude<keyof Row, 'reading'>, floor?: number) => meanOfReplicates(rows.map((row) => row[key]), '', level, floor);
  const signed = { deltaL: mean('deltaL'), deltaA: mean('deltaA'), deltaB: mean('deltaB'), deltaC: mean('deltaC') };
  const inWords = differenceInWords(signed);
  const results: Record<string, ResultValue> = {
    ...Object.fromEntries(differenceFormulaNames.map((name) => [name, mean(name, 0)])),
    ...signed,
    deltaH: mean('deltaH'),
    direction: { ...valueWithoutInterval(null, '', rows.length), text: inWords },
  };
  const formula = tolerance?.on ?? 'deltaE00';
  const run = given.run && { at: given.run, unit: given.runUnit };
  const values = rows.map((row) => row[formula]);
  if (run) results.drift = driftRate(values, run, level);
  const found = results[formula]!;
  const { title } = differenceFormulas[formula];
  const finding = `${title} ${found.value!.toFixed(2)} from the reference: the sample is ${inWords}; n = ${rows.length}.`;
  return {
    results,
    table: rows.map((row) => ({ ...row })),
    flags: [
      ...realColourFlags(reference, 'reference'),
      ...samples.flatMap((sample, index) => realColourFlags(sample, samples.length === 1 ? 'sample' : `sample[${index}]`)),
    ],
    notes: [...notesOf(given, found, rows.length), ...(results.drift ? driftNotes(title, results.drift, values, tolerance?.limit) : [])],
    figures: [
      abFigure(reference, samples, finding, tolerance, cmc),
      ...(rows.length > 1 ? [replicatesFigure(`${formula}-readings`, title, '', values, found, rows.map(({ reading }) => reading))] : []),
      ...(rows.length > 2 ? [driftFigure('drift', title, values, rows.map(({ reading }) => reading), tolerance?.limit, run)] : []),
    ],
  };
}

type Row = { reading: string } & Record<(typeof differenceFormulaNames)[number] | 'deltaL' | 'deltaA' | 'deltaB' | 'deltaC' | 'deltaH', number>;

function notesOf({ cmc, tolerance, referenceLight, sampleLight }: Given, found: ResultValue, n: number): string[] {
  const notes = [`CMC weights ${cmc.l}:${cmc.c}. ΔE94 and CMC weight by the reference: exchanging the two colours changes them.`];
  const light = sampleLight ?? referenceLight;
  if (light) notes.push(`Colours under ${lightInWords(light)}.`);
  if (tolerance) {
    notes.push(`${differenceFormulas[tolerance.on].title} ${found.value!.toFixed(2)} lies ${found.value! <= tolerance.limit ? 'within' : 'beyond'} the tolerance of ${tolerance.limit}.`);
  }
  notes.push(
    n === 1
      ? 'One pair of colours gives no interval; measure several places to see the scatter.'
      : 'Differences are means of those of the single readings; scatter alone makes a mean of ΔE larger than zero.',
  );
  return notes;
}

/** Whether the run drifts, and against its limit how far it has come. */
function driftNotes(title: string, { value, unit, low, high }: ResultValue, values: readonly number[], limit: number | undefined): string[] {
  if (value === null) return ['A drift takes three readings at least, at different places of the run.'];
  if (low === null || high === null || (low <= 0 && high >= 0)) return [`No drift of ${title} over the run can be told from the scatter.`];
  const way = value > 0 ? 'rises' : 'falls';
  const rate = `${title} ${way} by ${Math.abs(value).toFixed(2)} ${unit} (${Math.min(Math.abs(low), Math.abs(high)).toFixed(2)} to ${Math.max(Math.abs(low), Math.abs(high)).toFixed(2)})`;
  const highest = Math.max(...values);
  return [limit === undefined ? `${rate}.` : `${rate}; its highest reading is ${highest.toFixed(2)}, the limit ${limit}.`];
}
