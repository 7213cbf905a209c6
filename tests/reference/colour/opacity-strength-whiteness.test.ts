import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { coatWeightStrengthCalculation } from '../../../shared-lib/colour/coat-weight-strength.calculation.ts';
import { colourStrengthCalculation } from '../../../shared-lib/colour/colour-strength.calculation.ts';
import { absorptionOverScattering, kubelkaMunkLayer, reflectanceOver } from '../../../shared-lib/colour/kubelka-munk.ts';
import { metamerismIndex } from '../../../shared-lib/colour/metamerism.ts';
import { opacityCalculation } from '../../../shared-lib/colour/opacity.calculation.ts';
import { whitenessCalculation } from '../../../shared-lib/colour/whiteness.calculation.ts';
import { cieWhiteness } from '../../../shared-lib/colour/whiteness.ts';
import { studentTQuantile } from '../../../shared-lib/statistics/distributions.ts';

describe('opacity (values computed elsewhere from Kubelka 1948, J. Opt. Soc. Am. 38, 448)', () => {
  const [R0, R89, R80] = [0, 0.89, 0.8].map((backing) => reflectanceOver(backing, 0.9, 2)) as [number, number, number];

  it('R∞ 0.90, SX 2 over 0, 89 and 80 % backings', () => {
    expect(R0).toBeCloseTo(0.66096, 5);
    expect(R89).toBeCloseTo(0.89355, 5);
    expect(R80).toBeCloseTo(0.84364, 5);
  });

  it.each([[89, R89], [80, R80]])('from black and a %f %% backing the opacities over all backings follow', (backing, over) => {
    const { results } = runCalculation(opacityCalculation, { overBlackY: 100 * R0, overWhiteY: 100 * over, whiteBackingY: backing });
    expect(results.t425Pct!.value).toBeCloseTo(73.97, 3);
    expect(results.d2805Pct!.value).toBeCloseTo(78.346, 3);
    expect(Math.abs(results.iso2471Pct!.value! - 73.439)).toBeLessThan(0.0011);
  });

  it('contrast ratio 45.2/81.6: 55.392 %', () => {
    expect(runCalculation(opacityCalculation, { overBlackY: 45.2, overWhiteY: 81.6 }).results.contrastRatioPct!.value).toBeCloseTo(55.392, 3);
  });
});

it('R∞ of a layer that hardly scatters keeps its digits: a grows beyond bounds, and R∞ = a − √(a² − 1) nears 1/2a', () => {
  const [overBlack, overBacking, backing] = [4.52e-13, 8.16e-4, 0.89];
  // By hand: 2a = R + (R₀ − R + R_g)/(R₀·R_g), of which the second term alone counts.
  const expected = (overBlack * backing) / (overBlack - overBacking + backing);
  expect(kubelkaMunkLayer(overBlack, overBacking, backing)!.infinite / expected).toBeCloseTo(1, 10);
});

describe('colour strength (values computed elsewhere from Kubelka & Munk 1931)', () => {
  const strength = (input: object) => runCalculation(colourStrengthCalculation, input).results.strengthPct!.value!;

  it.each([[0.2, 1.6], [0.1, 4.05], [0.5, 0.25]])('K/S of %f is %f', (reflectance, expected) => {
    expect(absorptionOverScattering(reflectance)).toBeCloseTo(expected, 10);
  });

  it('at one wavelength 133.979 %, with the substrate removed 134.167 %, summed 128.172 %', () => {
    expect(strength({ sample: 0.12, standard: 0.15 })).toBeCloseTo(133.979, 3);
    expect(strength({ sample: 0.12, standard: 0.15, substrate: 0.85 })).toBeCloseTo(134.167, 3);
    expect(strength({ sample: [0.12, 0.28, 0.58], standard: [0.15, 0.3, 0.6] })).toBeCloseTo(128.172, 3);
  });
});

describe('whiteness and yellowness (the test-suite of colour-science, BSD-3-Clause, after ASTM E313-15, ASTM D1925, CIE 015)', () => {
  const of = (xyz: number[], illuminant: string, observer: number) => runCalculation(whitenessCalculation, { xyz, illuminant, observer }).results;

  it.each([
    [[95, 100, 105], { C2: 10.0895, D652: 4.34, C10: 9.074, D6510: 2.8945 }, 10.3, 55.74],
    [[105, 100, 95], { C2: 33.4505, D652: 28.66, C10: 32.726, D6510: 27.4055 }, 33.7, 21.86],
    [[100, 100, 100], { C2: 21.77, D652: 16.5, C10: 20.9, D6510: 15.15 }, 22, 38.8],
  ])('%j', (xyz, yellowness, d1925, old) => {
    expect(of(xyz, 'C', 2).yellownessE313!.value).toBeCloseTo(yellowness.C2, 8);
    expect(of(xyz, 'D65', 2).yellownessE313!.value).toBeCloseTo(yellowness.D652, 8);
    expect(of(xyz, 'C', 10).yellownessE313!.value).toBeCloseTo(yellowness.C10, 8);
    expect(of(xyz, 'D65', 10).yellownessE313!.value).toBeCloseTo(yellowness.D6510, 8);
    expect(of(xyz, 'C', 2).yellownessD1925!.value).toBeCloseTo(d1925, 8);
    expect(of(xyz, 'C', 2).whitenessOld!.value).toBeCloseTo(old, 8);
    expect(of(xyz, 'D65', 10).yellownessD1925!.value).toBeNull();
  });

  it.each([
    [[0.3139, 0.3311], 100, 0],
    [[0.35, 0.3334], 67.21, -34.605],
    [[0.3334, 0.3334], 80.49, -18.005],
  ] as const)('x, y %j: whiteness %f, tint %f (2°)', ([x, y], whiteness, tint) => {
    const result = cieWhiteness([(100 * x) / y, 100, (100 * (1 - x - y)) / y], 2, [0.3139, 0.3311]);
    expect(result.whiteness).toBeCloseTo(whiteness, 8);
    expect(result.tint).toBeCloseTo(tint, 8);
  });
});

describe('metamerism', () => {
  it('is nothing for a pair that matches under both lights, and the plain ΔE*ab for one that matches under the first', () => {
    const white = [95.047, 100, 108.883] as const;
    const other = [109.85, 100, 35.585] as const;
    const standard = [40, 42, 44] as const;
    const matched = { xyz: [standard, standard] as const, white };
    expect(metamerismIndex(matched, { xyz: [[46, 42, 14], [46, 42, 14]], white: other }, 'multiplicative')).toBe(0);
    // By hand: only Y differs, and so only f(Y): ΔL* = 116·d, Δa* = −500·d, Δb* = 200·d.
    const d = Math.cbrt(0.43) - Math.cbrt(0.42);
    const expected = d * Math.hypot(116, 500, 200);
    for (const correction of ['multiplicative', 'additive'] as const) {
      expect(metamerismIndex(matched, { xyz: [[46, 42, 14], [46, 43, 14]], white: other }, correction)).toBeCloseTo(expected, 10);
    }
  });

  it('takes out by each correction what that correction describes', () => {
    const white = [95.047, 100, 108.883] as const;
    const standard = [40, 42, 44] as const;
    const twice = { xyz: [standard, [20, 21, 22]] as const, white };
    expect(metamerismIndex(twice, { xyz: [[46, 42, 14], [23, 21, 7]], white }, 'multiplicative')).toBeCloseTo(0, 12);
    const shifted = { xyz: [standard, [39, 41, 43]] as const, white };
    expect(metamerismIndex(shifted, { xyz: [[46, 42, 14], [45, 41, 13]], white }, 'additive')).toBeCloseTo(0, 12);
  });
});

describe('coat weight for a reading', () => {
  it('has the interval of inverse prediction from a line: s(x0) = (s/b)·√(1/m + 1/n + (y0 − ȳ)²/(b²·Sxx))', () => {
    const x = [1, 2, 3, 4, 5, 6];
    const y = [0.42, 0.79, 1.24, 1.57, 2.03, 2.38];
    const present = [1.1, 1.14, 1.12];
    const { results } = runCalculation(coatWeightStrengthCalculation, {
      drawdowns: x.map((coatWeightGM2, i) => ({ coatWeightGM2, reading: y[i] })),
      present,
      target: 1.5,
      model: 'linear',
    });
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    const [xm, ym, y0] = [mean(x), mean(y), mean(present)];
    const Sxx = x.reduce((sum, value) => sum + (value - xm) ** 2, 0);
    const b = x.reduce((sum, value, i) => sum + (value - xm) * (y[i]! - ym), 0) / Sxx;
    const s = Math.sqrt(x.reduce((sum, value, i) => sum + (y[i]! - ym - b * (value - xm)) ** 2, 0) / 4);
    const x0 = xm + (y0 - ym) / b;
    const reach = studentTQuantile(0.975, 4) * (s / b) * Math.sqrt(1 / 3 + 1 / 6 + (y0 - ym) ** 2 / (b * b * Sxx));
    expect(results.presentCoatWeight!.value).toBeCloseTo(x0, 8);
    expect(results.presentCoatWeight!.low).toBeCloseTo(x0 - reach, 6);
    expect(results.presentCoatWeight!.high).toBeCloseTo(x0 + reach, 6);
  });
});
