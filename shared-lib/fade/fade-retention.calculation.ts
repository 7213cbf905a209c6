import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { deltaE2000 } from '../colour/delta-e-2000.ts';
import { deltaEab } from '../colour/delta-e-ab.ts';
import { labSchema, type Lab } from '../colour/lab.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { blueWoolResult } from './blue-wool-result.ts';
import { densityPairs } from './density-pairs.ts';
import { endpointSchema, endpointsReached } from './endpoint.ts';
import { fadeCautions } from './fade-cautions.ts';
import { deltaEF } from './grey-scale-change.ts';
import { greyScaleResult } from './grey-scale-result.ts';

const densityReading = z.number().min(-0.2).max(6);
const oneOrMore = <Item extends z.ZodType>(item: Item) => z.union([item, z.array(item).min(1).max(1000)]);

const input = z.strictObject({
  /** One reading, or replicate readings in pairs. `paper` is the density of the unprinted film or paper. */
  density: z
    .strictObject({
      before: oneOrMore(densityReading),
      after: oneOrMore(densityReading),
      paper: z.number().min(0).max(4).optional(),
      basis: z.enum(['absolute', 'minus-paper']).optional(),
    })
    .optional(),
  lab: z.strictObject({ before: z.union([labSchema, z.array(labSchema).min(1).max(1000)]), after: z.union([labSchema, z.array(labSchema).min(1).max(1000)]) }).optional(),
  endpoint: endpointSchema.default({ retentionPct: 70 }),
  /** Blue-wool references exposed beside the specimen, each with the ΔEF that it changed by. */
  blueWool: z.array(z.strictObject({ reference: z.int().min(1).max(8), deltaEF: z.number().min(0).max(200) })).min(1).max(8).optional(),
  level: z.number().gt(0).lt(1).default(0.95),
});

type Given = z.output<typeof input>;

export const fadeRetentionCalculation = defineCalculation({
  id: 'fade-retention',
  version: '1',
  title: 'Fade: what is left after exposure',
  input,
  compute,
  columns: [
    { key: 'pair', title: 'Pair' },
    { key: 'retentionPct', title: 'Retention', unit: '%', decimals: 1 },
    { key: 'deltaEab', title: 'ΔE*ab', decimals: 2 },
    { key: 'deltaE00', title: 'ΔE00', decimals: 2 },
    { key: 'deltaEF', title: 'ΔEF', decimals: 2 },
  ],
  cautions: fadeCautions,
  sources: [
    'ISO 105-A05 (ΔEF and grey-scale grade; step table from memory)',
    'ISO/CIE 11664-4 (ΔE*ab), ISO/CIE 11664-6 (ΔE00)',
    'ISO 105-B02 (blue-wool references)',
    'ISO 18909 (70 % retention as an illustrative endpoint, from memory)',
  ],
});

function compute(given: Given): Outcome {
  if (!given.density && !given.lab) {
    throw new InputError('density', null, 'Fade needs density before and after, lab before and after, or both.');
  }
  const flags: Flag[] = [];
  const notes: string[] = [];
  const retention = given.density ? densityPairs(given.density, flags, notes) : [];
  const colours = given.lab ? labPairs(given.lab) : [];
  if (!given.density) notes.push('No retention: it needs densities before and after exposure.');
  if (!given.lab) notes.push('No colour difference and no grey-scale grade: they need CIELAB readings before and after exposure.');

  const of = (values: number[], unit: string, floor?: number): ResultValue =>
    values.length === 0 ? valueWithoutInterval(null, unit, 0) : meanOfReplicates(values, unit, given.level, floor);
  const rows = colours.map(([before, after]) => ({
    deltaEab: deltaEab(before, after),
    deltaE00: deltaE2000(before, after),
    deltaEF: deltaEF(before, after),
  }));
  const change = of(rows.map((row) => row.deltaEF), '', 0);
  const results: Record<string, ResultValue> = {
    retentionPct: of(retention, '%'),
    deltaEab: of(rows.map((row) => row.deltaEab), '', 0),
    deltaE00: of(rows.map((row) => row.deltaE00), '', 0),
    greyScale: greyScaleResult(change),
    deltaEF: change,
  };
  if (given.blueWool) results.lightFastness = blueWoolResult(change, given.blueWool, flags, notes);
  if (Math.max(retention.length, rows.length) === 1) notes.push('One pair of readings gives no interval; replicate patches do.');
  notes.push(...endpointsReached(results, given.endpoint));
  return { results, table: tableOf(retention, rows), flags, notes };
}

function labPairs(lab: NonNullable<Given['lab']>): [Lab, Lab][] {
  const before = listOf(lab.before);
  const after = listOf(lab.after);
  if (before.length !== after.length) {
    throw new InputError('lab.after', after.length, `lab.after has ${after.length} colours and lab.before ${before.length}; each needs its partner.`);
  }
  return before.map((colour, index) => [colour, after[index]!]);
}

function listOf(colours: Lab | Lab[]): Lab[] {
  return Array.isArray(colours[0]) ? (colours as Lab[]) : [colours as Lab];
}

function tableOf(retention: number[], colours: Record<'deltaEab' | 'deltaE00' | 'deltaEF', number>[]): TableRow[] {
  return Array.from({ length: Math.max(retention.length, colours.length) }, (_, index) => ({
    pair: index + 1,
    retentionPct: retention[index] ?? null,
    deltaEab: colours[index]?.deltaEab ?? null,
    deltaE00: colours[index]?.deltaE00 ?? null,
    deltaEF: colours[index]?.deltaEF ?? null,
  }));
}
