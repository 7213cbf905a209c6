import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { illuminantNames, spectralPower, type Illuminant } from '../../../shared-lib/colour/illuminants.ts';
import { observerWeights } from '../../../shared-lib/colour/observer-weights.ts';
import { colourMatching, observerDegrees, type Observer } from '../../../shared-lib/colour/observers.ts';
import { tristimulusCalculation } from '../../../shared-lib/colour/tristimulus.calculation.ts';
import { weightingTables } from '../../../shared-lib/colour/weighting-tables.ts';
import { labBySums, linearFrom380, splined } from './one-nanometre.ts';

/** ASTM E308, Table 5, white points (from memory). */
const whitePoints: [Illuminant, Observer, number, number][] = [
  ['D50', 2, 96.422, 82.521],
  ['D50', 10, 96.72, 81.427],
  ['D65', 2, 95.047, 108.883],
  ['D65', 10, 94.811, 107.304],
  ['A', 2, 109.85, 35.585],
  ['A', 10, 111.144, 35.2],
  ['F2', 10, 103.279, 69.027],
  ['F11', 2, 100.962, 64.35],
  ['F11', 10, 103.863, 65.607],
];

describe('white points against ASTM E308, Table 5 (from memory)', () => {
  it.each(whitePoints)('%s, %i°', (illuminant, observer, X, Z) => {
    for (const stepNm of [20, 10, 5]) {
      const { white } = observerWeights({ startNm: 380, stepNm, count: 400 / stepNm + 1 }, illuminant, observer);
      // The tables have three decimals; the 5 nm sums end at 380 nm, where those of D65 still carry 0.02 of Z.
      expect(Math.abs(white[0] - X)).toBeLessThan(0.01);
      expect(white[1]).toBeCloseTo(100, 9);
      expect(Math.abs(white[2] - Z)).toBeLessThan(0.025);
    }
  });
});

/** ASTM D589-97, Table 1: weights of Y, illuminant A, 2°, 10 nm; 580 and 590 nm could not be read. */
const d589: Record<number, number> = {
  400: 0, 410: 0.002, 420: 0.008, 430: 0.027, 440: 0.061, 450: 0.117, 460: 0.209, 470: 0.362, 480: 0.618, 490: 1.039, 500: 1.802,
  510: 3.091, 520: 4.756, 530: 6.32, 540: 7.599, 550: 8.571, 560: 9.219, 570: 9.456, 600: 7.547, 610: 6.36, 620: 5.061, 630: 3.716,
  640: 2.559, 650: 1.639, 660: 0.971, 670: 0.533, 680: 0.289, 690: 0.147, 700: 0.075, 710: 0.039, 720: 0.02, 730: 0.01, 740: 0.005,
  750: 0.003, 760: 0.001, 770: 0.001,
};

describe('weighting tables', () => {
  it('has the Y weights that ASTM D589, Table 1, prints for A, 2°', () => {
    for (const [wavelength, weight] of Object.entries(d589)) expect(weightingTables.A[2].y[(Number(wavelength) - 360) / 10]).toBe(weight);
  });

  it.each(['A', 'D50', 'D65'] as const)('of %s are those of interpolating reflectance to 1 nm', (illuminant) => {
    // ASTM E2022, done here for one band at a time: reflectance 1 in this band and 0 in all others, interpolated by
    // cubic Lagrange polynomials written out, then integrated at 1 nm. The first and last interval are left out.
    for (const observer of observerDegrees) {
      const power = linearFrom380(spectralPower[illuminant]);
      const functions = (['x', 'y', 'z'] as const).map((key) => splined(colourMatching[observer][key], 380, 5, 380, 780));
      const luminous = power.reduce((sum, value, k) => sum + value * functions[1]![k]!, 0);
      (['x', 'y', 'z'] as const).forEach((key, place) => {
        for (let band = 4; band <= 38; band++) {
          let weight = 0;
          for (let k = 10; k <= 390; k++) weight += unitBand((380 + k - 360) / 10 - band) * power[k]! * functions[place]![k]!;
          expect(Math.abs((100 * weight) / luminous - weightingTables[illuminant][observer][key][band]!)).toBeLessThan(0.0025);
        }
      });
    }
  });
});

/** The cubic Lagrange interpolation, at a distance in steps, of 1 at one point and 0 at the others. */
function unitBand(distance: number): number {
  const d = Math.abs(distance);
  if (d >= 2) return 0;
  return d >= 1 ? -((d - 1) * (d - 2) * (d - 3)) / 6 : ((1 - d) * (1 + d) * (2 - d)) / 2;
}

const wavelengthsNm = Array.from({ length: 41 }, (_, index) => 380 + 10 * index);
const ink = (peaks: [at: number, width: number, density: number][]) => (wavelength: number) =>
  0.88 * 10 ** -peaks.reduce((sum, [at, width, density]) => sum + density * Math.exp(-(((wavelength - at) / width) ** 2)), 0);
const prints = {
  cyan: ink([[630, 70, 1.4], [380, 40, 0.2]]),
  magenta: ink([[545, 45, 1.35], [400, 60, 0.3]]),
  yellow: ink([[430, 50, 1.1]]),
  brown: ink([[450, 90, 0.8], [550, 80, 0.6], [650, 90, 0.35]]),
  white: ink([[370, 25, 0.5]]),
  black: ink([[500, 250, 1.6]]),
};

describe('spectrum to L*a*b* against an independent 1 nm integration (natural cubic splines), within 0.02', () => {
  const cases = Object.keys(prints).flatMap((name) => illuminantNames.flatMap((illuminant) => observerDegrees.map((observer) => [name as keyof typeof prints, illuminant, observer] as const)));

  it.each(cases)('%s under %s, %i°', (name, illuminant, observer) => {
    const reflectance = wavelengthsNm.map(prints[name]);
    const { x, y, z } = colourMatching[observer];
    // F2 and F11 are tabulated by bands of 5 nm with lines in them: summed at 5 nm as CIE 015 does.
    const lines = illuminant === 'F2' || illuminant === 'F11';
    const fine = splined(reflectance, 380, 10, 380, 780);
    const expected = lines
      ? labBySums(fine.filter((_, k) => k % 5 === 0), spectralPower[illuminant], [x, y, z])
      : labBySums(fine, linearFrom380(spectralPower[illuminant]), [x, y, z].map((values) => splined(values, 380, 5, 380, 780)) as [number[], number[], number[]]);
    for (const stepNm of [10, 5, 1]) {
      const wavelengths = Array.from({ length: 400 / stepNm + 1 }, (_, index) => 380 + stepNm * index);
      const { results } = runCalculation(tristimulusCalculation, { wavelengthsNm: wavelengths, reflectance: wavelengths.map((at) => fine[at - 380]), illuminant, observer });
      (['L', 'a', 'b'] as const).forEach((key, place) => expect(Math.abs(results[key]!.value! - expected[place]!), `${key} at ${stepNm} nm`).toBeLessThan(0.02));
    }
  });

  it.each([[360, 780], [360, 700], [380, 730], [400, 700], [400, 780]])('%i–%i nm, level beyond its ends', (from, to) => {
    const wavelengths = Array.from({ length: (to - from) / 10 + 1 }, (_, index) => from + 10 * index);
    const reflectance = wavelengths.map(prints.brown);
    const functions = (['x', 'y', 'z'] as const).map((key) => splined(colourMatching[2][key], 380, 5, 380, 780)) as [number[], number[], number[]];
    const expected = labBySums(splined(reflectance, from, 10, 380, 780), linearFrom380(spectralPower.D50), functions);
    const { results } = runCalculation(tristimulusCalculation, { wavelengthsNm: wavelengths, reflectance, illuminant: 'D50', observer: 2 });
    (['L', 'a', 'b'] as const).forEach((key, place) => expect(Math.abs(results[key]!.value! - expected[place]!), key).toBeLessThan(0.02));
  });

  it('comes within 0.1 with smooth prints at 20 nm', () => {
    for (const name of ['brown', 'black', 'yellow'] as const) {
      const coarse = wavelengthsNm.filter((_, index) => index % 2 === 0);
      const at = (wavelengths: number[]) => runCalculation(tristimulusCalculation, { wavelengthsNm: wavelengths, reflectance: wavelengths.map(prints[name]), illuminant: 'D65', observer: 10 }).results;
      for (const key of ['L', 'a', 'b']) expect(Math.abs(at(coarse)[key]!.value! - at(wavelengthsNm)[key]!.value!)).toBeLessThan(0.1);
    }
  });
});

describe('the perfect diffuser', () => {
  it.each(illuminantNames)('is L* 100, a* 0, b* 0 under %s', (illuminant) => {
    const { results } = runCalculation(tristimulusCalculation, { wavelengthsNm, reflectance: wavelengthsNm.map(() => 1), illuminant, observer: 10 });
    expect(results.L!.value).toBeCloseTo(100, 9);
    expect(results.C!.value).toBeLessThan(1e-9);
  });
});
