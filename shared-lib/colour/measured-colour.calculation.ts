import { z } from 'zod';
import { defineCalculation, runCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { coloursTable, comparisonTable, type Compared } from './colour-tables.ts';
import { colourDifferenceCalculation } from './colour-difference.calculation.ts';
import { cmcSchema, toleranceSchema } from './difference-formulas.ts';
import { illuminantNames } from './illuminants.ts';
import { chroma, hueDeg } from './lab.ts';
import { meanHue } from './mean-hue.ts';
import { meanCurve } from './mean-curve.ts';
import { ColourComputer, meanColour, measuredColourSchema, type ColourUnderLight, type MeasuredColour } from './measured-colour.ts';
import { holdToOneLight, lightInWords, measurementLightSchema } from './measurement-light.ts';
import { pairOfCurves } from './pair-of-curves.ts';
import { swatchPair } from './swatches.ts';

const samples = z.array(measuredColourSchema).min(1).max(5000);

const input = z.strictObject({
  reference: z.strictObject({ name: z.string().max(200).default('reference'), colour: measuredColourSchema, light: measurementLightSchema.optional() }),
  /** Readings over the print or the run in their order. */
  sample: samples,
  sampleLight: measurementLightSchema.optional(),
  labels: z.array(z.string().max(100)).max(5000).default([]),
  run: z.array(z.number().min(0).max(1e9)).max(5000).optional(),
  runUnit: z.enum(['m', 'min', 'prints']).default('m'),
  /** Other prints that the sample is seen beside: the last approved lot, the control. They decide nothing. */
  others: z.array(z.strictObject({ name: z.string().max(300), sample: samples, light: measurementLightSchema.optional() })).max(10).default([]),
  /** Under which the match is tried as well, where both are spectra. */
  secondIlluminant: z.enum(illuminantNames).default('A'),
  cmc: cmcSchema,
  tolerance: toleranceSchema.optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;

export const measuredColourCalculation = defineCalculation({
  id: 'measured-colour',
  version: '1',
  title: 'Measured colour against a reference and other prints',
  input,
  compute,
  columns: [
    ...colourDifferenceCalculation.columns,
    ...['L', 'a', 'b'].map((key) => ({ key, title: `${key}*`, decimals: 2 })),
    ...['X', 'Y', 'Z'].map((key) => ({ key, title: key, decimals: 2 })),
  ],
  cautions: [],
  sources: [...colourDifferenceCalculation.sources, 'CIE 015, ASTM E308 and E2022 (colours from spectra)', 'IEC 61966-2-1 and ISO 15076-1, annex E (colours on screen)'],
});

function compute(given: Given): Outcome {
  const { reference, sampleLight, tolerance, cmc, level } = given;
  holdToOneLight(reference.light, sampleLight, { reference: isSpectral(reference.colour), sample: given.sample.every(isSpectral) });
  const computer = new ColourComputer(sampleLight);
  const standard = computer.of(reference.colour, 'reference.colour');
  const read = given.sample.map((colour, index) => computer.of(colour, `sample[${index}]`));
  const difference = runCalculation(colourDifferenceCalculation, {
    reference: standard.lab,
    sample: read.map(({ lab }) => lab),
    labels: given.labels,
    ...(given.run ? { run: given.run, runUnit: given.runUnit } : {}),
    cmc,
    tolerance,
    sampleLight,
    level,
  });
  const others = given.others.map((other) => seenBeside(other, read, computer, given));
  const pair = pairOfCurves({ reference: { name: reference.name, curve: standard.curve }, sample: meanCurve(read), light: sampleLight, secondIlluminant: given.secondIlluminant });
  const mean = meanColour(read);
  const colours = [
    { name: reference.name, lab: standard.lab, xyz: standard.xyz },
    { name: read.length === 1 ? 'This print' : `This print, mean of ${read.length}`, ...mean },
    ...others.flatMap(({ name, mean: colour }) => (colour === null ? [] : [{ name, ...colour }])),
  ];
  const onReference: Compared = { name: reference.name, results: difference.results, problem: '' };
  return {
    results: { ...absent, ...difference.results, ...ofTheSample(read, level), ...pair.results },
    table: difference.table.map((row, index) => ({ ...row, ...coordinates(read[index]!) })),
    flags: [...difference.flags, ...withoutRepeats([...standard.flags, ...read.flatMap(({ flags }) => flags)])],
    notes: [...difference.notes, ...pair.notes, ...others.flatMap(({ name, problem }) => (problem === '' ? [] : [`Not compared with ${name}: ${problem}`]))],
    figures: [...difference.figures, ...pair.figures],
    tables: [
      ...(others.length > 0 ? [comparisonTable(onReference, others, tolerance)] : []),
      coloursTable(colours, sampleLight && lightInWords(sampleLight)),
      ...pair.tables,
    ],
    ...(sampleLight ? { swatches: [swatchPair({ name: reference.name, lab: standard.lab }, { name: 'This print', lab: mean.lab }, sampleLight)] } : {}),
  };
}

/** What only spectra, or places in a run, can give. */
const absent = { partingBand: valueWithoutInterval(null, '', 0), metamerismIndex: valueWithoutInterval(null, '', 0), deltaEabSecond: valueWithoutInterval(null, '', 0), drift: valueWithoutInterval(null, '', 0) };

function isSpectral(colour: MeasuredColour): boolean {
  return !('lab' in colour);
}

/** L*, a*, b* and the rest of the print itself. */
function ofTheSample(read: readonly ColourUnderLight[], level: number): Record<string, ResultValue> {
  const mean = (values: number[], floor?: number) => meanOfReplicates(values, '', level, floor);
  const labs = read.map(({ lab }) => lab);
  const xyz = read.flatMap((colour) => (colour.xyz === null ? [] : [colour.xyz]));
  const tristimulus = (place: 0 | 1 | 2) => (xyz.length === read.length ? mean(xyz.map((value) => value[place]), 0) : valueWithoutInterval(null, '', read.length));
  return {
    L: mean(labs.map(([L]) => L)),
    a: mean(labs.map(([, a]) => a)),
    b: mean(labs.map(([, , b]) => b)),
    C: mean(labs.map(([, a, b]) => chroma(a, b)), 0),
    h: labs.some(([, a, b]) => a !== 0 || b !== 0) ? meanHue(labs.map(([, a, b]) => [a, b]), level) : valueWithoutInterval(hueDeg(0, 0), '°', labs.length),
    X: tristimulus(0),
    Y: tristimulus(1),
    Z: tristimulus(2),
  };
}

function coordinates({ lab: [L, a, b], xyz }: ColourUnderLight) {
  return { L, a, b, X: xyz?.[0] ?? null, Y: xyz?.[1] ?? null, Z: xyz?.[2] ?? null };
}

/** The sample, as read, against another print's mean. What cannot be held against it says why; it decides nothing and stops nothing. */
function seenBeside(other: Given['others'][number], read: readonly ColourUnderLight[], computer: ColourComputer, given: Given): Compared & { mean: ReturnType<typeof meanColour> | null } {
  try {
    const spectral = other.sample.every(isSpectral);
    holdToOneLight(other.light, given.sampleLight, { reference: spectral, sample: given.sample.every(isSpectral) });
    const mean = meanColour(other.sample.map((colour, index) => computer.of(colour, `others.sample[${index}]`)));
    const { results } = runCalculation(colourDifferenceCalculation, {
      reference: mean.lab,
      sample: read.map(({ lab }) => lab),
      cmc: given.cmc,
      level: given.level,
    });
    return { name: other.name, results, problem: '', mean };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { name: other.name, results: null, problem: error.message.replace('The reference stands', 'It stands').replace('the sample under', 'this print under'), mean: null };
  }
}

function withoutRepeats(flags: readonly Flag[]): Flag[] {
  const seen = new Set<string>();
  return flags.filter(({ code, text }) => {
    const key = `${code} ${text}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
