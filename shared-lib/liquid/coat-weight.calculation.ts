import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { scaleResult } from '../calculation/scale-result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import { grubbsTest } from '../statistics/grubbs.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { summarise } from '../statistics/summarise.ts';

const mass = z.number().gt(0).max(10_000);

const input = z.strictObject({
  specimens: z
    .array(
      z.strictObject({
        areaM2: z.number().gt(0).max(100),
        /** With the dry coat. */
        coatedG: mass,
        /** The same piece without it: stripped, or weighed before it was coated. */
        bareG: mass,
        /** Just after coating, before drying. */
        wetG: mass.optional(),
      }),
    )
    .min(1)
    .max(1000),
  /** Of the wet ink, where the wet coat was not weighed. */
  solidsPct: z.number().gt(0).max(100).optional(),
  /** Of the dry coat, for its thickness. */
  dryDensityGCm3: z.number().gt(0).max(25).optional(),
  /** Least step of the balance. */
  readabilityMg: z.number().gt(0).max(1000).optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;

/** Mass of a coat per area, by the difference of two weighings. */
export const coatWeightCalculation = defineCalculation({
  id: 'coat-weight',
  version: '1',
  title: 'Coat weight by weighing',
  input,
  compute,
  columns: [
    { key: 'specimen', title: 'Specimen', decimals: 0 },
    { key: 'differenceMg', title: 'Dry coat', unit: 'mg', decimals: 1 },
    { key: 'dry', title: 'Dry coat weight', unit: 'g/m²', decimals: 3 },
    { key: 'wet', title: 'Wet coat weight', unit: 'g/m²', decimals: 3 },
    { key: 'solidsPct', title: 'Solids', unit: '%', decimals: 1 },
  ],
  cautions: ['Solvent for stripping: heed its safety data sheet, ventilate, wear gloves, keep flames away.'],
  sources: ['Difference of weighings per area (mass balance)', 'F. E. Grubbs, Technometrics 11 (1969) 1 (a specimen far from the others)'],
});

function compute(given: Given): Outcome {
  const { specimens, solidsPct, dryDensityGCm3, level } = given;
  const weighed = specimens.map(weigh);
  const someWet = weighed.some(({ wet }) => wet !== null);
  const withoutWet = weighed.findIndex(({ wet }) => wet === null);
  if (someWet && withoutWet !== -1) {
    throw new InputError(`specimens[${withoutWet}].wetG`, null, 'Weigh every specimen wet, or none: a mean of some would be of others than the dry one.');
  }
  if (someWet && solidsPct !== undefined) {
    throw new InputError('solidsPct', solidsPct, 'The wet coat was weighed, so its solids follow from that; leave solidsPct out.');
  }
  const coats = weighed.map((one) => one.dry);
  const dry = meanOfReplicates(coats, 'g/m²', level, 0);
  const solids = weighed.flatMap(({ solidsPct: value }) => value ?? []);
  return {
    results: {
      dry,
      wet: someWet ? meanOfReplicates(weighed.map(({ wet }) => wet!), 'g/m²', level, 0) : solidsPct === undefined ? valueWithoutInterval(null, 'g/m²', 0) : scaleResult(dry, 100 / solidsPct, 'g/m²'),
      solidsPct: solids.length > 0 ? meanOfReplicates(solids, '%', level, 0) : valueWithoutInterval(null, '%', 0),
      thicknessUm: dryDensityGCm3 === undefined ? valueWithoutInterval(null, 'µm', 0) : scaleResult(dry, 1 / dryDensityGCm3, 'µm'),
      spread: spreadOf(coats, level),
    },
    table: weighed.map((row, index) => ({ specimen: index + 1, ...row })),
    flags: flagsOf(given, weighed.map(({ differenceMg }) => differenceMg), coats),
    notes: [
      someWet ? 'Wet and dry coat weighed on the same pieces.' : solidsPct === undefined ? 'Dry coat; the wet one needs the solids of the ink.' : `Wet coat worked out from the dry one with ${solidsPct} % solids.`,
      ...(specimens.length === 1 ? ['One specimen gives no interval.'] : []),
    ],
    figures: [replicatesFigure('coat-weights', 'Dry coat weight', 'g/m²', coats, dry)],
  };
}

/** Standard deviation of the pieces with its chi-square interval; without a value for one piece. */
function spreadOf(coats: readonly number[], level: number): ResultValue {
  const { standardDeviation } = summarise(coats);
  if (standardDeviation === null) return valueWithoutInterval(null, 'g/m²', coats.length);
  const { sdLow, sdHigh } = fitCensoredNormal(coats.map((coat) => ({ low: coat, high: coat })), level);
  return { value: standardDeviation, unit: 'g/m²', low: sdLow, high: sdHigh, level, n: coats.length, bound: 'exact' };
}

interface Weighed {
  differenceMg: number;
  dry: number;
  wet: number | null;
  solidsPct: number | null;
}

function weigh({ areaM2, coatedG, bareG, wetG }: Given['specimens'][number], index: number): Weighed {
  const coat = coatedG - bareG;
  if (coat < 0) throw new InputError(`specimens[${index}].bareG`, bareG, `Without its coat the piece cannot be heavier (${bareG} g) than with it (${coatedG} g); check which is which.`);
  if (wetG !== undefined && wetG < coatedG) throw new InputError(`specimens[${index}].wetG`, wetG, `Wet, the piece cannot be lighter (${wetG} g) than dry (${coatedG} g); check which is which.`);
  const wetCoat = wetG === undefined ? null : wetG - bareG;
  return { differenceMg: coat * 1000, dry: coat / areaM2, wet: wetCoat === null ? null : wetCoat / areaM2, solidsPct: wetCoat === null || wetCoat === 0 ? null : (100 * coat) / wetCoat };
}

/** A difference of fewer steps of the balance than this is known to no better than some percent. */
const FEW_STEPS = 20;

function flagsOf({ readabilityMg }: Given, differencesMg: number[], dry: number[]): Flag[] {
  const flags: Flag[] = [];
  if (readabilityMg !== undefined) {
    differencesMg.forEach((difference, index) => {
      if (difference >= FEW_STEPS * readabilityMg) return;
      flags.push({ code: 'few-balance-steps', where: `specimens[${index}]`, text: `The coat weighs ${difference.toFixed(1)} mg, fewer than ${FEW_STEPS} steps of the balance (${readabilityMg} mg); take a larger piece.` });
    });
  }
  const grubbs = grubbsTest(dry);
  if (grubbs?.outlying) {
    flags.push({ code: 'outlier', where: `specimens[${grubbs.index}]`, text: `${dry[grubbs.index]!.toFixed(3)} g/m² lies far from the others (Grubbs, p = ${grubbs.p.toFixed(3)}); look for the cause. It counts.` });
  }
  return flags;
}
