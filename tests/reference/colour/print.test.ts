import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { dotArea } from '../../../shared-lib/colour/dot-area.ts';
import { hueErrorGreynessCalculation } from '../../../shared-lib/colour/hue-error-greyness.calculation.ts';
import { printContrastCalculation } from '../../../shared-lib/colour/print-contrast.calculation.ts';
import { toneValueCalculation } from '../../../shared-lib/colour/tone-value.calculation.ts';
import { trapCalculation } from '../../../shared-lib/colour/trap.calculation.ts';

/** Values computed elsewhere from the published formulas; no published worked example was found. */
const toneValue = (input: unknown) => runCalculation(toneValueCalculation, input).results;

describe('tone value, Murray & Davies 1936', () => {
  it.each([
    [1.5, 0.3, 0, 51.51],
    [1.4, 0.5, 0, 71.212],
    [1.48, 0.56, 0.08, 69.66],
  ])('solid %f, tint %f, paper %f: %f %%', (solid, tint, paper, expected) => {
    expect(Math.abs(toneValue({ solid, tint, paper }).toneValuePct!.value! - expected)).toBeLessThan(0.0006);
  });

  it('gain is what lies above the nominal value: 71.212 − 50', () => {
    expect(toneValue({ solid: 1.4, tint: 0.5, paper: 0, nominalPct: 50 }).gainPct!.value).toBeCloseTo(21.212, 3);
  });
});

describe('tone value, Yule & Nielsen 1951', () => {
  it('n 1.7, solid 1.50, tint 0.30: 38.430 %', () => {
    expect(Math.abs(toneValue({ solid: 1.5, tint: 0.3, paper: 0, n: 1.7 }).toneValuePct!.value! - 38.43)).toBeLessThan(0.0006);
  });

  it('n 1 is Murray–Davies; a large n nears the ratio of densities', () => {
    expect(dotArea(1.5, 0.3, 1)).toBe(dotArea(1.5, 0.3));
    expect(dotArea(1.5, 0.3, 1e6)).toBeCloseTo(0.2, 5);
  });
});

describe('spot colour tone value, ISO 20654 (from memory)', () => {
  const spot = { paper: [84, 87, 70], solid: [20, 12, 8], white: [96.42, 100, 82.49] };

  it('tint (45, 42, 32): 45.737 %', () => {
    expect(Math.abs(toneValue({ ...spot, tint: [45, 42, 32] }).toneValuePct!.value! - 45.737)).toBeLessThan(0.0006);
  });

  it('the paper is 0 and the solid 100', () => {
    expect(toneValue({ ...spot, tint: spot.paper }).toneValuePct!.value).toBe(0);
    expect(toneValue({ ...spot, tint: spot.solid }).toneValuePct!.value).toBeCloseTo(100, 10);
  });
});

describe('print contrast', () => {
  it('1.50 and 0.90: 40.0 %', () => {
    expect(runCalculation(printContrastCalculation, { solid: 1.5, tint: 0.9 }).results.contrastPct!.value).toBeCloseTo(40, 10);
  });
});

describe('trap (Chung & Hsu, A Study of Ink Trapping; Brunner and Ritz from memory)', () => {
  it('0.45, 1.35, 1.55', () => {
    const { results } = runCalculation(trapCalculation, { first: 0.45, second: 1.35, overprint: 1.55 });
    expect(results.apparentPct!.value).toBeCloseTo(81.481, 3);
    expect(results.brunnerPct!.value).toBeCloseTo(98.747, 3);
    expect(results.ritzPct!.value).toBeCloseTo(96.361, 3);
  });
});

describe('hue error, greyness and efficiency (from memory)', () => {
  it('magenta: red 0.15, green 1.30, blue 0.62', () => {
    const { results } = runCalculation(hueErrorGreynessCalculation, { red: 0.15, green: 1.3, blue: 0.62 });
    expect(results.hueErrorPct!.value).toBeCloseTo(40.87, 3);
    expect(results.greynessPct!.value).toBeCloseTo(11.538, 3);
    expect(results.efficiencyPct!.value).toBeCloseTo(70.385, 3);
  });
});
