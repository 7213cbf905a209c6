import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { densityCalculation } from '../../../shared-lib/colour/density.calculation.ts';
import { colourMatching } from '../../../shared-lib/colour/observers.ts';
import { spectralPower } from '../../../shared-lib/colour/illuminants.ts';
import { statusProducts, visualProduct } from '../../../shared-lib/colour/spectral-products.ts';

const wavelengthsNm = Array.from({ length: 41 }, (_, index) => 380 + 10 * index);
const density = (reflectance: number[], status: string, more = {}) => runCalculation(densityCalculation, { wavelengthsNm, reflectance, status, ...more }).results;

describe('a grey of known reflectance: D = −log10 R', () => {
  it.each([[0.1, 1], [0.5, 0.30103], [0.01, 2]])('R %f is D %f through every filter of every status', (reflectance, expected) => {
    for (const status of ['T', 'E', 'A', 'visual']) {
      const results = density(wavelengthsNm.map(() => reflectance), status);
      for (const channel of status === 'visual' ? ['visual'] : ['cyan', 'magenta', 'yellow', 'visual']) expect(results[channel]!.value).toBeCloseTo(expected, 5);
    }
  });
});

describe('ISO 5-3 spectral products', () => {
  /** log10 of the product, peak 5.000, as ISO 5-3 tabulates it; a few of each table. */
  it.each([
    ['T red', statusProducts.T.red, { 590: 4.477, 600: 5, 620: 4.74, 650: 3.699 }],
    ['T green', statusProducts.T.green, { 490: 3.699, 510: 4.833, 530: 5, 560: 4.623, 590: 3.398 }],
    ['T blue', statusProducts.T.blue, { 400: 3.778, 430: 4.778, 460: 5, 490: 4.813, 520: 3.699 }],
    ['E blue', statusProducts.E.blue, { 400: 4.114, 420: 4.778, 440: 5, 470: 4.672, 490: 3.778 }],
    ['A red', statusProducts.A.red, { 610: 4.638, 620: 5, 640: 4.604, 670: 3.551 }],
    ['A green', statusProducts.A.green, { 510: 3.822, 530: 5, 550: 4.644, 570: 3.609 }],
  ] as const)('%s', (_name, product, logarithms) => {
    for (const [wavelength, logarithm] of Object.entries(logarithms)) {
      expect(Math.abs(Math.log10(product[(Number(wavelength) - 340) / 10]!) + 3 - logarithm)).toBeLessThan(0.002);
    }
  });

  it('visual is V(λ) times illuminant A, within 0.1 of 100 but at 620 nm', () => {
    const products = wavelengthsNm.map((_, index) => colourMatching[2].y[2 * index]! * spectralPower.A[2 * index]!);
    const peak = Math.max(...products);
    wavelengthsNm.forEach((wavelength, index) => {
      const tabulated = visualProduct[(wavelength - 340) / 10]!;
      if (wavelength !== 620) expect(Math.abs((100 * products[index]!) / peak - tabulated)).toBeLessThan(0.1);
    });
  });
});

describe('a spectrum with an edge, by hand', () => {
  it('status E red: all reflected up to 580 nm, a tenth from 590 nm', () => {
    // ISO 5-3, status E red: 0.01 + 0.06 + 0.45 up to 580 nm; from 590 nm 29.99 + 100 + 84.92 + 54.95 + 25 + 10 + 5 +
    // 1.5 + 0.5 + 0.3 + 0.15 + 0.05 + 0.01 = 312.37.
    const expected = -Math.log10((0.52 + 0.1 * 312.37) / (0.52 + 312.37));
    expect(density(wavelengthsNm.map((at) => (at < 585 ? 1 : 0.1)), 'E').cyan!.value).toBeCloseTo(expected, 10);
  });

  it('minus paper is the difference of the two densities, and says so', () => {
    const paper = wavelengthsNm.map(() => 0.8);
    const ink = wavelengthsNm.map(() => 0.08);
    const { cyan } = density(ink, 'E', { paper });
    expect(cyan!.value).toBeCloseTo(1, 10);
    expect(cyan!.unit).toBe('minus paper');
    expect(density(ink, 'E').cyan!.unit).toBe('absolute');
  });
});
