import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { coatWeightStrengthCalculation } from '../../../shared-lib/colour/coat-weight-strength.calculation.ts';
import { colourStrengthCalculation } from '../../../shared-lib/colour/colour-strength.calculation.ts';
import { glossCalculation } from '../../../shared-lib/colour/gloss.calculation.ts';
import { hueErrorGreynessCalculation } from '../../../shared-lib/colour/hue-error-greyness.calculation.ts';
import { matchByEyeCalculation } from '../../../shared-lib/colour/match-by-eye.calculation.ts';
import { opacityCalculation } from '../../../shared-lib/colour/opacity.calculation.ts';
import { printContrastCalculation } from '../../../shared-lib/colour/print-contrast.calculation.ts';
import { ratioOfMeansPct } from '../../../shared-lib/colour/ratio-of-means.ts';
import { toneValueCalculation } from '../../../shared-lib/colour/tone-value.calculation.ts';
import { trapCalculation } from '../../../shared-lib/colour/trap.calculation.ts';
import { whitenessCalculation } from '../../../shared-lib/colour/whiteness.calculation.ts';
import { refusal } from '../surface-energy/refusal.ts';

const drawdowns = [1, 1.5, 2, 2.5, 3].map((coatWeightGM2, index) => ({ coatWeightGM2, reading: [0.87, 1.15, 1.4, 1.56, 1.71][index]! }));

describe('input that cannot be used is refused', () => {
  it.each([
    ['a solid lighter than its tint', toneValueCalculation, { solid: 1.2, tint: 1.3, paper: 0 }, 'tint', /lighter than this tint/],
    ['a solid no denser than the paper', toneValueCalculation, { solid: 0.1, tint: 0.05, paper: 0.1 }, 'solid', /denser than the paper/],
    ['a negative density', toneValueCalculation, { solid: 1.2, tint: -0.3, paper: 0 }, 'tint', /at least -0.05/],
    ['a negative solid', toneValueCalculation, { solid: -1.2, tint: 0.3, paper: 0 }, 'solid', /more than 0/],
    ['a paper that is not given', toneValueCalculation, { solid: 1.2, tint: 0.3 }, 'paper', /missing/],
    ['a Yule–Nielsen factor below 1', toneValueCalculation, { solid: 1.2, tint: 0.3, paper: 0, n: 0.9 }, 'n', /at least 1/],
    ['a Yule–Nielsen factor for a spot colour', toneValueCalculation, { solid: [20, 12, 8], tint: [45, 42, 32], paper: [84, 87, 70], n: 1.7 }, '', /n\./],
    ['a spot solid with the colour of its paper', toneValueCalculation, { solid: [84, 87, 70], tint: [84, 87, 70], paper: [84, 87, 70] }, 'solid', /no way between/],
    ['no tint at all', toneValueCalculation, { solid: 1.2, paper: 0 }, 'tint', /tint/],
    ['a solid lighter than the contrast patch', printContrastCalculation, { solid: [1.5, 0.9], tint: [0.9, 1.5] }, 'tint[1]', /exchanged/],
    ['solids and tints of different number', printContrastCalculation, { solid: [1.5, 1.5, 1.5], tint: [0.9, 0.9] }, 'tint', /2 readings and solid has 3/],
    ['an overprint lighter than the first ink', trapCalculation, { first: 1.2, second: 1.3, overprint: 1.1 }, 'overprint', /second ink's filter/],
    ['a negative first ink', trapCalculation, { first: -0.2, second: 1.3, overprint: 1.1 }, 'first', /at least 0/],
    ['an ink that is none', hueErrorGreynessCalculation, { red: 0, green: 0, blue: 0 }, 'red', /no ink/],
    ['a place lighter over black', opacityCalculation, { overBlackY: 82, overWhiteY: 80 }, 'overBlackY', /exchanged/],
    ['a white that reflects nothing', opacityCalculation, { overBlackY: 0, overWhiteY: 0 }, 'overWhiteY', /above zero/],
    ['a black for a white', whitenessCalculation, { xyz: [0, 0, 0], illuminant: 'D65', observer: 10 }, 'xyz[1]', /above zero/],
    ['K/S of a reflectance of zero', colourStrengthCalculation, { sample: 0, standard: 0.15 }, 'sample', /above 0/],
    ['K/S of fluorescence', colourStrengthCalculation, { sample: 104, standard: 80, scale: 'percent' }, 'sample', /fluorescence/],
    ['a standard no stronger than its substrate', colourStrengthCalculation, { sample: 0.3, standard: 0.85, substrate: 0.85 }, 'standard', /no more than the substrate/],
    ['spectra of different length', colourStrengthCalculation, { sample: [0.1, 0.2], standard: [0.1, 0.2, 0.3] }, 'sample', /some are missing/],
    ['a spectrum against one reflectance', colourStrengthCalculation, { sample: 0.1, standard: [0.1, 0.2, 0.3] }, 'sample', /one kind/],
    ['weighting without wavelengths', colourStrengthCalculation, { sample: [0.1, 0.2], standard: [0.1, 0.2], method: 'weighted' }, 'wavelengthsNm', /wavelengths/],
    ['an angle of no gloss meter', glossCalculation, { angleDeg: 30, values: [40] }, 'angleDeg', /one of 20, 45, 60, 85/],
    ['a negative gloss', glossCalculation, { angleDeg: 60, values: [40, -1] }, 'values[1]', /at least 0/],
    ['a grade between the steps', matchByEyeCalculation, { comparisons: [{ grade: 4.2 }] }, 'comparisons[0].grade', /one of 1, 1.5/],
    ['three drawdowns', coatWeightStrengthCalculation, { drawdowns: drawdowns.slice(0, 3), present: 1, target: 1.2 }, 'drawdowns', /at least 4/],
    ['drawdowns of two coat weights', coatWeightStrengthCalculation, { drawdowns: [1, 1, 2, 2].map((coatWeightGM2) => ({ coatWeightGM2, reading: coatWeightGM2 })), present: 1, target: 1.2 }, 'drawdowns', /three different/],
    ['drawdowns that grow lighter', coatWeightStrengthCalculation, { drawdowns: drawdowns.map(({ coatWeightGM2, reading }) => ({ coatWeightGM2: 4 - coatWeightGM2, reading })), present: 1, target: 1.2 }, 'drawdowns', /does not rise/],
    ['a target beyond the ink', coatWeightStrengthCalculation, { drawdowns, present: 1.2, target: 5, model: 'saturating' }, 'target', /beyond what this ink reaches/],
  ])('%s', (_what, calculation, input, field, message) => {
    const error = refusal(() => runCalculation(calculation, input));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });
});

describe('doubtful readings are flagged, never dropped', () => {
  it.each([
    ['a tint lighter than the paper', toneValueCalculation, { solid: 1.2, tint: 0.05, paper: 0.08 }, 'tint-below-paper'],
    ['a spot tint beyond its solid', toneValueCalculation, { solid: [20, 12, 8], tint: [10, 5, 3], paper: [84, 87, 70] }, 'beyond-solid'],
    ['an overprint denser than both inks', trapCalculation, { first: 0.4, second: 1.2, overprint: 1.7 }, 'trap-above-100'],
    ['a filter density below the paper', hueErrorGreynessCalculation, { red: -0.02, green: 1.3, blue: 0.6 }, 'below-paper'],
    ['readings that no layer gives', opacityCalculation, { overBlackY: 80, overWhiteY: 89.5, whiteBackingY: 60 }, 'no-layer'],
    ['a sample too yellow for whiteness', whitenessCalculation, { xyz: [80, 84, 50], illuminant: 'D65', observer: 10 }, 'not-white'],
    ['a sample weaker than the substrate', colourStrengthCalculation, { sample: 0.9, standard: 0.3, substrate: 0.85 }, 'below-substrate'],
    ['gloss at 60° that 20° tells apart better', glossCalculation, { angleDeg: 60, values: [82, 84] }, 'angle-choice'],
    ['gloss at 85° that was chosen against 60°', glossCalculation, { angleDeg: 85, values: [60, 62], gloss60: 30 }, 'angle-choice'],
    ['observers more than a grade apart', matchByEyeCalculation, { comparisons: [{ grade: 4.5, secondGrade: 3 }] }, 'observers-apart'],
    ['a target outside the drawdowns', coatWeightStrengthCalculation, { drawdowns, present: 1.2, target: 1.95, model: 'linear' }, 'extrapolated'],
  ])('%s', (_what, calculation, input, code) => {
    expect(runCalculation(calculation, input).flags.map((flag) => flag.code)).toContain(code);
  });

  it('not the right angle', () => {
    expect(runCalculation(glossCalculation, { angleDeg: 60, values: [40, 42] }).flags).toEqual([]);
    expect(runCalculation(glossCalculation, { angleDeg: 20, values: [60, 62], gloss60: 85 }).flags).toEqual([]);
  });
});

describe('tone curve', () => {
  const curve = { solid: [1.47, 1.49], paper: 0.08, patches: [{ nominalPct: 75, tint: 0.9 }, { nominalPct: 50, tint: [0.55, 0.57] }, { nominalPct: 25, tint: 0.32 }, { nominalPct: 50, tint: 0.56 }] };

  it('gathers replicates by nominal value and reports the patch asked for', () => {
    const at50 = runCalculation(toneValueCalculation, curve);
    expect(at50.results.toneValuePct!.n).toBe(3);
    expect(at50.table.map(({ nominalPct, n }) => [nominalPct, n])).toEqual([[25, 1], [50, 3], [75, 1]]);
    expect(runCalculation(toneValueCalculation, { ...curve, reportAtPct: 80 }).results.gainPct!.n).toBe(1);
    expect(at50.results.gainPct!.high! - at50.results.gainPct!.low!).toBeCloseTo(at50.results.toneValuePct!.high! - at50.results.toneValuePct!.low!, 10);
  });

  it('is drawn from paper to solid beside the line of no gain', () => {
    const figure = runCalculation(toneValueCalculation, curve).figures.find(({ id }) => id === 'tone-curve')!;
    const line = figure.series.find(({ name }) => name === 'tone curve')!.points;
    expect(line[0]).toEqual({ x: 0, y: 0 });
    expect(line.at(-1)).toEqual({ x: 100, y: 100 });
    expect(line).toHaveLength(5);
  });
});

describe('hue error', () => {
  it('has none for a grey, and no division by zero', () => {
    const { results, notes } = runCalculation(hueErrorGreynessCalculation, { red: 1, green: 1, blue: 1 });
    expect(results.hueErrorPct!.value).toBeNull();
    expect(results.greynessPct!.value).toBe(100);
    expect(notes.join(' ')).toContain('no hue error');
  });
});

describe('colour strength', () => {
  it('of replicates has an interval, of itself is 100 % by every way', () => {
    expect(runCalculation(colourStrengthCalculation, { sample: [0.12, 0.13, 0.125], standard: 0.15 }).results.strengthPct).toMatchObject({ n: 3, level: 0.95 });
    const wavelengthsNm = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
    const spectrum = wavelengthsNm.map((at) => 0.1 + 0.5 * ((at - 400) / 300) ** 2);
    const { results } = runCalculation(colourStrengthCalculation, { sample: spectrum, standard: spectrum, wavelengthsNm, method: 'weighted' });
    for (const key of ['strengthPct', 'maximumPct', 'summedPct', 'weightedPct']) expect(results[key]!.value).toBeCloseTo(100, 10);
  });

  it('weighted differs from summed when the samples part where the eye is weak', () => {
    const wavelengthsNm = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
    const standard = wavelengthsNm.map(() => 0.2);
    const sample = wavelengthsNm.map((at) => (at >= 690 ? 0.1 : 0.2));
    const { results } = runCalculation(colourStrengthCalculation, { sample, standard, wavelengthsNm });
    expect(results.summedPct!.value).toBeGreaterThan(105);
    expect(results.weightedPct!.value).toBeLessThan(101);
  });
});

describe('gloss retained', () => {
  it('is the ratio of the means with an interval that narrows with replicates', () => {
    const few = ratioOfMeansPct([50, 52], [40, 42], 0.95);
    const many = ratioOfMeansPct([50, 52, 51, 50, 52, 51], [40, 42, 41, 40, 42, 41], 0.95);
    expect(many.value).toBeCloseTo((100 * 41) / 51, 10);
    expect(many.high! - many.low!).toBeLessThan(few.high! - few.low!);
    expect(ratioOfMeansPct([50], [40, 41], 0.95)).toMatchObject({ low: null, high: null });
  });
});

describe('match by eye', () => {
  it('gives the lower half grade between two, its range, and how far two observers agree', () => {
    const { results } = runCalculation(matchByEyeCalculation, { comparisons: [{ grade: 4, secondGrade: 4.5 }, { grade: 3.5, secondGrade: 3.5 }, { grade: 5 }] });
    expect(results.grade).toMatchObject({ value: 4, text: '4', low: 3.5, high: 5, level: null, n: 5 });
    expect(results.worst!.text).toBe('3-4');
    expect(results.agreementPct).toMatchObject({ value: 50, n: 2 });
    expect(results.withinHalfGradePct!.value).toBe(100);
  });

  it('has no agreement without a second observer', () => {
    expect(runCalculation(matchByEyeCalculation, { comparisons: [{ grade: 4 }] }).results.agreementPct!.value).toBeNull();
  });
});

describe('coat weight', () => {
  it('finds the change that made the reading: from 2 to 2.5 g/m² is 25 %', () => {
    const exact = [0.8, 1.2, 1.8, 2.4, 3].map((coatWeightGM2) => ({ coatWeightGM2, reading: 2.2 * (1 - Math.exp(-0.5 * coatWeightGM2)) }));
    const reading = (coatWeight: number) => 2.2 * (1 - Math.exp(-0.5 * coatWeight));
    const { results, notes } = runCalculation(coatWeightStrengthCalculation, { drawdowns: exact, present: reading(2), target: reading(2.5), coatWeightChangePct: 25 });
    expect(results.changePct!.value).toBeCloseTo(25, 4);
    expect(results.targetCoatWeight!.value).toBeCloseTo(2.5, 5);
    expect(results.expectedReading!.value).toBeCloseTo(reading(2.5), 6);
    expect(notes[0]).toMatch(/^Add 25\.0 %/);
  });

  it('says to take off where the print is too strong, with an interval about the change', () => {
    const { results, notes } = runCalculation(coatWeightStrengthCalculation, { drawdowns, present: 1.5, target: 1.4 });
    expect(notes[0]).toMatch(/^Take off \d+\.\d % ± \d+\.\d %/);
    expect(results.changePct!.low!).toBeLessThan(results.changePct!.value!);
    expect(results.changePct!.high!).toBeGreaterThan(results.changePct!.value!);
  });
});
