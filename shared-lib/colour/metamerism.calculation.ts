import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { deltaE2000 } from './delta-e-2000.ts';
import { deltaEab } from './delta-e-ab.ts';
import { illuminantNames, type Illuminant } from './illuminants.ts';
import type { Lab } from './lab.ts';
import { metamerismIndex } from './metamerism.ts';
import { observerWeights, type ObserverWeights } from './observer-weights.ts';
import { observerDegrees } from './observers.ts';
import { readReflectance, scaleSchema, spectrumSchema } from './reflectance-scale.ts';
import { reflectanceDifferenceFigure, reflectanceFigure } from './reflectance-figure.ts';
import { holdToBands } from './spectra-input.ts';
import { gridOf, wavelengthsOf, wavelengthsSchema } from './spectral-grid.ts';
import { spectralRangeFlags } from './spectral-range-flags.ts';
import { labFromXyz } from './xyz.ts';
import { xyzFromSpectrum } from './xyz-from-spectrum.ts';

const input = z.strictObject({
  wavelengthsNm: wavelengthsSchema,
  standard: spectrumSchema,
  sample: spectrumSchema,
  scale: scaleSchema,
  /** The light under which the two should match, and the one under which they are tried. */
  reference: z.enum(illuminantNames).default('D65'),
  test: z.enum(illuminantNames).default('A'),
  observer: z.literal(observerDegrees).default(10),
  correction: z.enum(['multiplicative', 'additive']).default('multiplicative'),
});

/** Beyond this the pair is no match to begin with, and the index rests on its correction. */
const matchAtMost = 1;

export const metamerismCalculation = defineCalculation({
  id: 'metamerism',
  version: '1',
  title: 'Metamerism',
  input,
  compute,
  columns: [
    { key: 'illuminant', title: 'Illuminant' },
    { key: 'deltaEab', title: 'ΔE*ab', decimals: 2 },
    { key: 'deltaE00', title: 'ΔE00', decimals: 2 },
    { key: 'index', title: 'Index', decimals: 2 },
  ],
  cautions: [],
  sources: ['CIE 015 (special metamerism index: change in illuminant; from memory)', 'ISO/CIE 11664-4 (ΔE*ab)'],
});

function compute({ wavelengthsNm, standard, sample, scale, reference, test, observer, correction }: z.output<typeof input>): Outcome {
  if (reference === test) throw new InputError('test', test, 'The test illuminant must be another than the reference illuminant.');
  const grid = gridOf(wavelengthsNm);
  holdToBands([standard], grid.count, 'standard');
  holdToBands([sample], grid.count, 'sample');
  const { fractions, flags, notes } = readReflectance([standard, sample], scale, 'sample');
  const [one, other] = fractions as [number[], number[]];
  const pair = (illuminant: Illuminant) => pairUnder(observerWeights(grid, illuminant, observer), one, other);
  const underReference = pair(reference);
  const rows = illuminantNames.map((illuminant) => {
    const under = pair(illuminant);
    const [standardLab, sampleLab] = under.labs;
    const index = illuminant === reference ? null : metamerismIndex(underReference, under, correction);
    return { illuminant, deltaEab: deltaEab(standardLab, sampleLab), deltaE00: deltaE2000(standardLab, sampleLab), index };
  });
  const rowOf = (illuminant: Illuminant) => rows.find((row) => row.illuminant === illuminant)!;
  const matched = rowOf(reference).deltaEab;
  const index = rowOf(test).index;
  if (index === null) throw new InputError('standard', null, 'One of the spectra reflects nothing in X, Y or Z under the reference illuminant, so that it cannot be brought to match.');
  const single = (value: number) => valueWithoutInterval(value, '', 1);
  const wavelengths = wavelengthsOf(grid);
  return {
    results: {
      index: single(index),
      differenceOfDifferences: single(differenceOfDifferences(underReference.labs, pair(test).labs)),
      deltaEabReference: single(matched),
      deltaEabTest: single(rowOf(test).deltaEab),
    },
    table: rows,
    flags: [...flags, ...spectralRangeFlags(grid), ...(matched > matchAtMost ? [noMatch(matched, reference)] : [])],
    notes: [
      ...notes,
      `ΔE*ab under ${test} after ${correction} correction to ΔE = 0 under ${reference}; ${observer}° observer.`,
      'One pair of spectra gives no interval.',
    ],
    figures: [
      reflectanceFigure(
        wavelengths,
        [{ name: 'standard', role: 'reference', values: one }, { name: 'sample', role: 'reading', values: other }],
        `The pair differs by ΔE*ab ${matched.toFixed(2)} under ${reference} and ${rowOf(test).deltaEab.toFixed(2)} under ${test}; index ${index.toFixed(2)}.`,
      ),
      reflectanceDifferenceFigure(wavelengths, other, one),
    ],
  };
}

function pairUnder(weights: ObserverWeights, standard: number[], sample: number[]) {
  const xyz = [xyzFromSpectrum(weights, standard), xyzFromSpectrum(weights, sample)] as const;
  return { xyz, white: weights.white, labs: [labFromXyz(xyz[0], weights.white), labFromXyz(xyz[1], weights.white)] as const };
}

/** √Σ(Δ1 − Δ2)² of ΔL*, Δa* and Δb* under the two lights: how far the difference itself moves. */
function differenceOfDifferences(first: readonly [Lab, Lab], second: readonly [Lab, Lab]): number {
  return Math.hypot(...first[0].map((_, place) => first[1][place]! - first[0][place]! - (second[1][place]! - second[0][place]!)));
}

function noMatch(difference: number, reference: Illuminant): Flag {
  return { code: 'no-match', where: 'sample', text: `The two differ by ΔE*ab ${difference.toFixed(2)} under ${reference} already; the index then rests on the correction (common practice: match to within ${matchAtMost}).` };
}
