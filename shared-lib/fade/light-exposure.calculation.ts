import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { labSchema } from '../colour/lab.ts';
import { formatNumber } from '../quantity/format.ts';
import { blueWoolBeside, requireColour, type BlueWoolPatches } from './blue-wool-beside.ts';
import { colourFade, type ColourFade, type FadeQuestion } from './colour-fade.ts';
import { stateBasis } from './density-flags.ts';
import { exposedPatches } from './exposed-patches.ts';
import { fadeCautions } from './fade-cautions.ts';
import { fadeLifeCalculation } from './fade-life.calculation.ts';
import { fadeRetentionCalculation } from './fade-retention.calculation.ts';
import { leastExposed } from './fade-series.ts';
import { inPlace } from './in-place.ts';
import { orderExposures } from './order-exposures.ts';
import { exposureUnits } from './radiant-exposure.ts';
import { retentionFigure } from './retention-figure.ts';
import { severalColours } from './several-colours.ts';

const input = z.strictObject({
  /** The one at exposure 0 is the reference of its patch (`series`); patches of one `colour` are replicates. */
  readings: z
    .array(
      z.strictObject({
        colour: z.string().trim().max(100).optional(),
        series: z.string().max(100).optional(),
        /** The patch is no print but this blue-wool reference, exposed beside them. */
        blueWool: z.int().min(1).max(8).optional(),
        exposure: z.number().min(0).max(1e9),
        density: z.number().min(-0.2).max(6).optional(),
        lab: labSchema.optional(),
      }),
    )
    .min(2)
    .max(5000),
  exposureUnit: z.enum(exposureUnits).default('h'),
  irradianceWPerM2: z.number().gt(0).max(5000).optional(),
  densityBasis: z.enum(['absolute', 'minus-paper']).optional(),
  /** Of the unprinted film or paper, for absolute densities. */
  paperDensity: z.number().min(0).max(4).optional(),
  /** Which change the exposure to the limit is asked of. */
  endpointOn: z.enum(['retention', 'deltaE00']).default('retention'),
  endpoint: z
    .strictObject({ retentionPct: z.number().gt(0).lt(100).default(70), deltaE00: z.number().gt(0).max(100).optional() })
    .default({ retentionPct: 70 }),
  level: z.number().gt(0).lt(1).default(0.95),
});

type Given = z.output<typeof input>;

export const lightExposureCalculation = defineCalculation({
  id: 'light-exposure',
  version: '1',
  title: 'Light exposure of printed patches',
  input,
  compute,
  columns: [
    { key: 'colour', title: 'Colour' },
    { key: 'series', title: 'Patch' },
    { key: 'exposure', title: 'Exposure' },
    { key: 'density', title: 'Density', decimals: 2 },
    { key: 'retentionPct', title: 'Retention', unit: '%', decimals: 1 },
    { key: 'deltaEab', title: 'ΔE*ab', decimals: 2 },
    { key: 'deltaE00', title: 'ΔE00', decimals: 2 },
    { key: 'deltaEF', title: 'ΔEF', decimals: 2 },
    { key: 'greyScale', title: 'Grey scale' },
  ],
  cautions: fadeCautions,
  sources: [...new Set([...fadeRetentionCalculation.sources, ...fadeLifeCalculation.sources])],
});

function compute(given: Given): Outcome {
  const { readings, densityBasis, paperDensity, exposureUnit, irradianceWPerM2, endpointOn, endpoint, level } = given;
  if (densityBasis === 'minus-paper' && paperDensity !== undefined) {
    throw new InputError('paperDensity', paperDensity, 'Densities read minus paper take no paper density; it would be subtracted twice.');
  }
  if (endpointOn === 'deltaE00' && endpoint.deltaE00 === undefined) {
    throw new InputError('endpoint.deltaE00', null, 'Say which ΔE00 counts as faded.');
  }
  const flags: Flag[] = [];
  const notes: string[] = [];
  if (readings.some(({ density }) => density !== undefined)) stateBasis({ paper: paperDensity, basis: densityBasis }, flags, notes);
  const question: FadeQuestion = { endpointOn, endpoint, exposureUnit, irradianceWPerM2, paper: paperDensity ?? 0, level };
  const all = readings.map((_, place) => place);
  const names = [...new Set(all.filter((place) => readings[place]!.blueWool === undefined).map((place) => readings[place]!.colour ?? ''))];
  const begun = names.map((name) => fadeOf(name, all, given, question, flags));
  const colours = begun.filter(({ last }) => last.exposure > 0);
  if (colours.length === 0) throw new InputError('readings', 0, 'Only unexposed readings so far; enter a reading after exposure.');
  flags.push(...begun.filter(({ last }) => last.exposure === 0).map(({ name }): Flag => ({ code: 'colour-not-exposed', where: `colour ${name}`, text: `The colour ${name || 'without a name'} has only unexposed readings so far.` })));
  const references = referencesOf(all, given, flags);
  const fastness = references.length === 0 ? [] : colours.map((colour) => blueWoolBeside(colour, references, flags, notes));
  const outcome = colours.length === 1 ? oneColour(colours[0]!, question) : severalColours(colours, question, fastness);
  return {
    ...outcome,
    results: { exposureToLimit: valueWithoutInterval(null, exposureUnit, 0), ...outcome.results, lightFastness: leastOf(fastness) },
    table: [
      ...colours.flatMap(({ name, patches }) => patches.flat().map((reading) => ({ ...(name === '' ? {} : { colour: name }), ...reading }))),
      ...references.flatMap(({ reference, patch }) => patch.map((reading) => ({ colour: `blue wool ${reference}`, ...reading }))),
    ],
    flags: [...flags, ...(outcome.flags ?? [])],
    notes: [...notes, ...(outcome.notes ?? [])],
  };
}

function fadeOf(name: string, all: number[], { readings }: Given, question: FadeQuestion, flags: Flag[]): ColourFade {
  const own = all.filter((place) => readings[place]!.blueWool === undefined && (readings[place]!.colour ?? '') === name);
  const places = orderExposures(readings, own, (place) => [name, readings[place]!.series].filter(Boolean).join(', patch '), flags);
  return inPlace(places, flags, (found) => colourFade(name, places.map((place) => readings[place]!), question, found));
}

/** Patches of blue wool; several of one reference count with their mean. */
function referencesOf(all: number[], { readings }: Given, flags: Flag[]): BlueWoolPatches {
  const numbers = [...new Set(all.flatMap((place) => readings[place]!.blueWool ?? []))].sort((a, b) => a - b);
  return numbers.flatMap((reference) => {
    const own = all.filter((place) => readings[place]!.blueWool === reference);
    requireColour(own, readings);
    const places = orderExposures(readings, own, (place) => [`blue wool ${reference}`, readings[place]!.series].filter(Boolean).join(', patch '), flags);
    const patches = inPlace(places, flags, (found) => exposedPatches(places.map((place) => readings[place]!), 0, found));
    return patches.map((patch) => ({ reference, patch }));
  });
}

function oneColour({ last, life }: ColourFade, { exposureUnit }: FadeQuestion): Outcome {
  const figure = retentionFigure(last, exposureUnit);
  return {
    results: { ...last.results, ...life?.results },
    flags: life?.flags ?? [],
    notes: [
      `Retention, ΔE00 and grey scale are those at the last exposure, ${last.exposure} ${exposureUnit}.`,
      ...(life ? [...life.notes, modelNote(life)] : [`No exposure to the limit yet: each patch needs ${leastExposed} readings after exposure 0.`]),
    ],
    figures: [...(life?.figures ?? []), ...(figure ? [figure] : [])],
  };
}

/** The lowest light fastness of the colours that have one; without a value where none has. */
function leastOf(fastness: ResultValue[]): ResultValue {
  const rated = fastness.filter(({ value }) => value !== null);
  return rated.length === 0 ? valueWithoutInterval(null, '', 0) : rated.reduce((least, one) => (one.value! < least.value! ? one : least));
}

/** The comparison of models that the table of fade-life would show. */
function modelNote({ table }: CalculationResult): string {
  const first = table[0]!.series;
  const models = table
    .filter(({ series }) => series === first)
    .map(({ model, deltaAicc }) => `${String(model).replaceAll('-', ' ')} ${typeof deltaAicc === 'number' ? formatNumber(deltaAicc, 1) : '—'}`);
  return `ΔAICc of the models: ${models.join(', ')}.`;
}
