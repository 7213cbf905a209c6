import { z } from 'zod';
import { defineCalculation, runCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, Flag } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { labSchema } from '../colour/lab.ts';
import { formatNumber } from '../quantity/format.ts';
import { atLastExposure } from './at-last-exposure.ts';
import { stateBasis } from './density-flags.ts';
import { exposedPatches, type ExposedReading } from './exposed-patches.ts';
import { fadeCautions } from './fade-cautions.ts';
import { fadeLifeCalculation } from './fade-life.calculation.ts';
import { fadeRetentionCalculation } from './fade-retention.calculation.ts';
import { leastExposed } from './fade-series.ts';
import { exposureUnits } from './radiant-exposure.ts';
import { retentionFigure } from './retention-figure.ts';

const input = z.strictObject({
  /** In the order of exposure; the first of each patch (`series`) is unexposed. */
  readings: z
    .array(
      z.strictObject({
        series: z.string().max(100).optional(),
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
  const { readings, densityBasis, paperDensity, exposureUnit, level } = given;
  if (densityBasis === 'minus-paper' && paperDensity !== undefined) {
    throw new InputError('paperDensity', paperDensity, 'Densities read minus paper take no paper density; it would be subtracted twice.');
  }
  if (given.endpointOn === 'deltaE00' && given.endpoint.deltaE00 === undefined) {
    throw new InputError('endpoint.deltaE00', null, 'Say which ΔE00 counts as faded.');
  }
  const flags: Flag[] = [];
  const notes: string[] = [];
  if (readings.some(({ density }) => density !== undefined)) stateBasis({ paper: paperDensity, basis: densityBasis }, flags, notes);
  const patches = exposedPatches(readings, paperDensity ?? 0, flags);
  const last = atLastExposure(patches, level, flags);
  if (last.exposure === 0) {
    throw new InputError('readings', 0, 'Only unexposed readings so far; enter a reading after exposure.');
  }
  notes.push(`Retention, ΔE00 and grey scale are those at the last exposure, ${last.exposure} ${exposureUnit}.`);
  const life = lifeOf(patches, given);
  if (!life) notes.push(`No exposure to the limit yet: each patch needs ${leastExposed} readings after exposure 0.`);
  const figure = retentionFigure(last, exposureUnit);
  return {
    results: { exposureToLimit: valueWithoutInterval(null, exposureUnit, 0), ...last.results, ...life?.results },
    table: patches.flat().map((reading) => ({ ...reading })),
    flags: [...flags, ...(life?.flags ?? [])],
    notes: [...notes, ...(life ? [...life.notes, modelNote(life)] : [])],
    figures: [...(life?.figures ?? []), ...(figure ? [figure] : [])],
  };
}

/** Fade life over the readings that have the quantity asked for; `null` while a patch has too few. */
function lifeOf(patches: ExposedReading[][], { endpointOn, endpoint, exposureUnit, irradianceWPerM2, level }: Given): CalculationResult | null {
  const key = endpointOn === 'retention' ? 'retentionPct' : 'deltaE00';
  const read = patches.map((patch) => patch.filter((reading) => reading[key] !== null));
  if (read.some((patch) => patch.filter(({ exposure }) => exposure > 0).length < leastExposed)) return null;
  return runCalculation(fadeLifeCalculation, {
    readings: read.flat().map((reading) => ({
      exposure: reading.exposure,
      ...(reading.series === '' ? {} : { series: reading.series }),
      ...(endpointOn === 'retention' ? { retained: reading.retentionPct! } : { deltaE: reading.deltaE00! }),
    })),
    ...(endpointOn === 'retention' ? { retainedAs: 'percent', endpoint: { retentionPct: endpoint.retentionPct } } : { endpoint: { deltaE: endpoint.deltaE00 } }),
    exposureUnit,
    irradianceWPerM2,
    level,
  });
}

/** The comparison of models that the table of fade-life would show. */
function modelNote({ table }: CalculationResult): string {
  const first = table[0]!.series;
  const models = table
    .filter(({ series }) => series === first)
    .map(({ model, deltaAicc }) => `${String(model).replaceAll('-', ' ')} ${typeof deltaAicc === 'number' ? formatNumber(deltaAicc, 1) : '—'}`);
  return `ΔAICc of the models: ${models.join(', ')}.`;
}
