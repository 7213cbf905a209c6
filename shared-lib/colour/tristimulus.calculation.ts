import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { illuminantNames } from './illuminants.ts';
import { chroma, hueDeg } from './lab.ts';
import { meanHue } from './mean-hue.ts';
import { observerWeights } from './observer-weights.ts';
import { observerDegrees } from './observers.ts';
import { readReflectance, scaleSchema, spectrumSchema } from './reflectance-scale.ts';
import { reflectanceFigure } from './reflectance-figure.ts';
import { oneOrMore } from './replicates.ts';
import { holdToBands } from './spectra-input.ts';
import { gridOf, wavelengthsOf, wavelengthsSchema } from './spectral-grid.ts';
import { spectralRangeFlags } from './spectral-range-flags.ts';
import { labFromXyz } from './xyz.ts';
import { xyzFromSpectrum } from './xyz-from-spectrum.ts';

const input = z.strictObject({
  wavelengthsNm: wavelengthsSchema,
  /** One spectrum, or replicate spectra, of one print. */
  reflectance: oneOrMore(spectrumSchema),
  scale: scaleSchema,
  illuminant: z.enum(illuminantNames),
  observer: z.literal(observerDegrees),
  level: levelSchema,
});

export const tristimulusCalculation = defineCalculation({
  id: 'tristimulus',
  version: '1',
  title: 'Tristimulus values and CIELAB from a spectrum',
  input,
  compute,
  columns: [
    { key: 'spectrum', title: 'Spectrum' },
    ...['X', 'Y', 'Z'].map((key) => ({ key, title: key, decimals: 3 })),
    ...['L', 'a', 'b', 'C'].map((key) => ({ key, title: `${key}*`, decimals: 2 })),
    { key: 'h', title: 'h', unit: '°', decimals: 1 },
  ],
  cautions: [],
  sources: [
    'CIE 015 (observers, illuminants, 5 nm summation, interpolation)',
    'ASTM E308, 7.3.2.2 (short ranges); ASTM E2022 (weighting tables at 10 nm)',
    'ISO/CIE 11664-4 (CIELAB)',
  ],
});

function compute({ wavelengthsNm, reflectance, scale, illuminant, observer, level }: z.output<typeof input>): Outcome {
  const grid = gridOf(wavelengthsNm);
  const spectra = Array.isArray(reflectance[0]) ? (reflectance as number[][]) : [reflectance as number[]];
  holdToBands(spectra, grid.count, 'reflectance');
  const { fractions, flags, notes } = readReflectance(spectra, scale, 'reflectance');
  const weights = observerWeights(grid, illuminant, observer);
  const colours = fractions.map((spectrum) => {
    const xyz = xyzFromSpectrum(weights, spectrum);
    const [L, a, b] = labFromXyz(xyz, weights.white);
    return { X: xyz[0], Y: xyz[1], Z: xyz[2], L, a, b, C: chroma(a, b), h: hueDeg(a, b) };
  });
  const mean = (key: keyof (typeof colours)[number], floor?: number) => meanOfReplicates(colours.map((colour) => colour[key]), '', level, floor);
  const [Xn, Yn, Zn] = weights.white;
  return {
    results: {
      X: mean('X', 0),
      Y: mean('Y', 0),
      Z: mean('Z', 0),
      L: mean('L'),
      a: mean('a'),
      b: mean('b'),
      C: mean('C', 0),
      h: meanHue(colours.map(({ a, b }) => [a, b]), level),
    },
    table: colours.map((colour, index) => ({ spectrum: index + 1, ...colour })),
    flags: [...flags, ...spectralRangeFlags(grid)],
    notes: [
      ...notes,
      `Illuminant ${illuminant}, ${observer}° observer; white point ${Xn.toFixed(3)}, ${Yn.toFixed(3)}, ${Zn.toFixed(3)}. No correction for the instrument's bandpass.`,
      ...(colours.length === 1 ? ['One spectrum gives no interval; replicate readings do.'] : []),
    ],
    figures: [
      reflectanceFigure(
        wavelengthsOf(grid),
        fractions.map((values, index) => ({ name: fractions.length === 1 ? 'reflectance' : `spectrum ${index + 1}`, role: 'reading', values })),
        `Under ${illuminant}, ${observer}°: L* ${mean('L').value!.toFixed(2)}, a* ${mean('a').value!.toFixed(2)}, b* ${mean('b').value!.toFixed(2)}; n = ${fractions.length}.`,
      ),
    ],
  };
}
