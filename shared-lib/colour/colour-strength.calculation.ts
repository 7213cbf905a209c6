import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { illuminantNames } from './illuminants.ts';
import { observerWeights } from './observer-weights.ts';
import { observerDegrees } from './observers.ts';
import { readReflectance, scaleSchema, spectrumSchema } from './reflectance-scale.ts';
import { reflectanceFigure } from './reflectance-figure.ts';
import { holdToBands } from './spectra-input.ts';
import { gridOf, wavelengthsSchema } from './spectral-grid.ts';
import { netAbsorption, strengthAtMaximum, strengthBySum } from './strength.ts';

const one = z.number().min(-1).max(400);

const input = z.strictObject({
  /** Reflectance at one wavelength, or a spectrum. */
  standard: z.union([one, spectrumSchema]),
  /** Of the same kind as the standard; a list of them are replicates. */
  sample: z.union([one, spectrumSchema, z.array(spectrumSchema).min(1).max(1000)]),
  /** Reflectance of the bare substrate, whose K/S is subtracted from both. */
  substrate: z.union([one, spectrumSchema]).optional(),
  scale: scaleSchema,
  /** Which strength of spectra is `strengthPct`. */
  method: z.enum(['maximum', 'summed', 'weighted']).default('summed'),
  /** Needed to weight the bands by the eye. */
  wavelengthsNm: wavelengthsSchema.optional(),
  illuminant: z.enum(illuminantNames).default('D65'),
  observer: z.literal(observerDegrees).default(10),
  level: levelSchema,
});

type Given = z.output<typeof input>;

export const colourStrengthCalculation = defineCalculation({
  id: 'colour-strength',
  version: '1',
  title: 'Colour strength by K/S',
  input,
  compute,
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'maximumPct', title: 'At the maximum', unit: '%', decimals: 1 },
    { key: 'summedPct', title: 'Summed', unit: '%', decimals: 1 },
    { key: 'weightedPct', title: 'Weighted', unit: '%', decimals: 1 },
  ],
  cautions: [],
  sources: ['Kubelka & Munk 1931 (K/S)', 'Strength by K/S at the maximum, summed and weighted: common practice of ink and textile laboratories'],
});

function compute(given: Given): Outcome {
  const { standard, samples, substrate, flags, notes } = bands(given);
  const weights = weightsFor(given, standard.length);
  const ofStandard = netAbsorption(standard, substrate);
  if (ofStandard.some((value) => value <= 0)) {
    if (ofStandard.every((value) => value <= 0)) throw new InputError('standard', given.standard, 'The standard absorbs no more than the substrate; there is no strength to compare with.');
    flags.push({ code: 'no-absorption', where: 'standard', text: 'In some bands the standard absorbs no more than its substrate; sums there subtract.' });
  }
  const spectral = standard.length > 1;
  const rows = samples.map((sample, index) => {
    const ofSample = netAbsorption(sample, substrate);
    return {
      reading: index + 1,
      maximumPct: 100 * strengthAtMaximum(ofSample, ofStandard),
      summedPct: spectral ? 100 * strengthBySum(ofSample, ofStandard) : null,
      weightedPct: weights ? 100 * strengthBySum(ofSample, ofStandard, weights) : null,
    };
  });
  const mean = (key: 'maximumPct' | 'summedPct' | 'weightedPct'): ResultValue => {
    const values = rows.flatMap((row) => (row[key] === null ? [] : [row[key]]));
    return values.length === 0 ? valueWithoutInterval(null, '%', 0) : meanOfReplicates(values, '%', given.level);
  };
  const key = spectral ? (`${given.method}Pct` as const) : 'maximumPct';
  const strengthPct = mean(key);
  if (strengthPct.value! < 0) flags.push({ code: 'below-substrate', where: 'sample', text: 'The sample absorbs less than the substrate, which makes its strength negative; check that the readings are not exchanged.' });
  const wayOf = { maximumPct: spectral ? 'where the standard absorbs most' : 'at one wavelength', summedPct: 'summed over all bands', weightedPct: `weighted by the ${given.observer}° observer under ${given.illuminant}` };
  return {
    results: { strengthPct, maximumPct: mean('maximumPct'), summedPct: mean('summedPct'), weightedPct: mean('weightedPct') },
    table: rows,
    flags,
    notes: [
      ...notes,
      `Strength by K/S ${wayOf[key]}.`,
      substrate ? "The substrate's K/S was subtracted from both." : 'Without the reflectance of the substrate its share stays in both, which draws the strength towards 100 %.',
      ...(spectral && !weights ? ['No weighted strength: it needs wavelengthsNm.'] : []),
      ...(rows.length === 1 ? ['One reading gives no interval.'] : []),
    ],
    figures: [
      replicatesFigure('strength-readings', 'Strength', '%', rows.map((row) => row[key]!), strengthPct),
      ...(given.wavelengthsNm
        ? [
            reflectanceFigure(
              given.wavelengthsNm,
              [{ name: 'standard', role: 'reference' as const, values: standard }, ...samples.map((values, index) => ({ name: samples.length === 1 ? 'sample' : `sample ${index + 1}`, role: 'reading' as const, values }))],
              `The sample has ${strengthPct.value!.toFixed(1)} % of the standard's strength; n = ${samples.length}.`,
            ),
          ]
        : []),
    ],
  };
}

/** Standard, samples and substrate as bands of equal number on the scale 0–1. */
function bands(given: Given): { standard: number[]; samples: number[][]; substrate: number[] | undefined; flags: Flag[]; notes: string[] } {
  const spectral = Array.isArray(given.standard);
  if (spectral !== Array.isArray(given.sample) && spectral) throw new InputError('sample', given.sample, 'The standard is a spectrum and the sample one reflectance; both must be of one kind.');
  if (!spectral && Array.isArray(given.sample) && Array.isArray(given.sample[0])) throw new InputError('sample', null, 'The standard is one reflectance and the samples are spectra; both must be of one kind.');
  const standard = spectral ? (given.standard as number[]) : [given.standard as number];
  const samples = samplesOf(given.sample, spectral);
  holdToBands(samples, standard.length, 'sample');
  const substrate = given.substrate === undefined ? [] : [Array.isArray(given.substrate) ? given.substrate : standard.map(() => given.substrate as number)];
  holdToBands(substrate, standard.length, 'substrate');
  const { fractions, notes } = readReflectance([standard, ...substrate, ...samples], given.scale, 'sample');
  const [readStandard, ...rest] = fractions as [number[], ...number[][]];
  const readSubstrate = given.substrate === undefined ? undefined : rest.shift()!;
  refuseWithoutKs(readStandard, 'standard');
  if (readSubstrate) refuseWithoutKs(readSubstrate, 'substrate');
  rest.forEach((sample) => refuseWithoutKs(sample, 'sample'));
  return { standard: readStandard, samples: rest, substrate: readSubstrate, flags: [], notes };
}

function samplesOf(sample: Given['sample'], spectral: boolean): number[][] {
  if (typeof sample === 'number') return [[sample]];
  if (Array.isArray(sample[0])) return sample as number[][];
  return spectral ? [sample as number[]] : (sample as number[]).map((value) => [value]);
}

function refuseWithoutKs(spectrum: number[], field: string): void {
  const odd = spectrum.find((value) => value <= 0 || value > 1);
  if (odd === undefined) return;
  throw new InputError(field, odd, `K/S needs reflectance above 0 and up to 100 %; ${field} has ${(100 * odd).toFixed(1)} %${odd > 1 ? ', which fluorescence adds to and K/S cannot describe' : ''}.`);
}

function weightsFor({ wavelengthsNm, illuminant, observer, method }: Given, count: number): Float64Array | null {
  if (!wavelengthsNm) {
    if (method === 'weighted' && count > 1) throw new InputError('wavelengthsNm', null, 'Weighted strength needs the wavelengths of the spectra in wavelengthsNm.');
    return null;
  }
  const grid = gridOf(wavelengthsNm);
  holdToBands([new Array<number>(count).fill(0)], grid.count, 'standard');
  const { x, y, z } = observerWeights(grid, illuminant, observer);
  return x.map((value, band) => value + y[band]! + z[band]!);
}
