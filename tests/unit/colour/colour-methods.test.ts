import { describe, expect, it } from 'vitest';
import { coatWeightForDensityMethod } from '../../../shared-lib/colour/coat-weight-for-density.method.ts';
import { colourMeasuredMethod } from '../../../shared-lib/colour/colour-measured.method.ts';
import { colourStrengthMethod } from '../../../shared-lib/colour/colour-strength.method.ts';
import { glossMethod } from '../../../shared-lib/colour/gloss.method.ts';
import { hueErrorMethod } from '../../../shared-lib/colour/hue-error.method.ts';
import { matchByEyeMethod } from '../../../shared-lib/colour/match-by-eye.method.ts';
import { opacityMethod } from '../../../shared-lib/colour/opacity.method.ts';
import { printContrastMethod } from '../../../shared-lib/colour/print-contrast.method.ts';
import { printDensityMethod } from '../../../shared-lib/colour/print-density.method.ts';
import { spotToneValueMethod } from '../../../shared-lib/colour/spot-tone-value.method.ts';
import { toneValueMethod } from '../../../shared-lib/colour/tone-value.method.ts';
import { trapMethod } from '../../../shared-lib/colour/trap.method.ts';
import { whitenessMethod } from '../../../shared-lib/colour/whiteness.method.ts';
import type { BenchReadings, Method } from '../../../shared-lib/method/method.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { bench, type Cells } from './bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const minus: Cells = { densityBasis: 'minus-paper', status: 'E' };
const absolute: Cells = { densityBasis: 'absolute', status: 'E' };
const d50: Cells = { illuminant: 'D50', observer: '2', referenceIlluminant: 'D50', referenceObserver: '2' };
const red: Cells = { reference: 'R0', referenceL: 48, referenceA: 62, referenceB: 40, cmcL: 2, ...d50 };
const drawdowns = [1, 1.5, 2, 2.5, 3].map((coatWeightGM2, index) => ({ coatWeightGM2, reading: [0.87, 1.15, 1.4, 1.56, 1.71][index]! }));

const sheets: [Method, BenchReadings][] = [
  [matchByEyeMethod, bench([{ grade: 4, secondGrade: 4.5 }, {}, { grade: 3.5, secondGrade: 4 }], { secondObserver: 'TV' })],
  [colourMeasuredMethod, bench([{ L: 47, a: 61, b: 41 }, { L: 47.4, a: 60.5, b: 41.2 }, { L: 46.8, a: 61.4, b: 40.7 }], red)],
  [printDensityMethod, bench([{ cyan: 1.4, visual: 1.7 }, {}, { cyan: 1.42, visual: 1.68 }], minus)],
  [toneValueMethod, bench([{ nominalPct: 0, density: 0.08 }, { nominalPct: 100, density: 1.48 }, { nominalPct: 50, density: 0.56 }, { nominalPct: 75, density: 0.9 }], { ...absolute, reportAtPct: 50 })],
  [spotToneValueMethod, bench([{ nominalPct: 0, X: 84, Y: 87, Z: 70 }, { nominalPct: 50, X: 45, Y: 42, Z: 32 }, { nominalPct: 100, X: 20, Y: 12, Z: 8 }], { reportAtPct: 50 })],
  [printContrastMethod, bench([{ solid: 1.5, tint: 0.9 }, { solid: 1.52, tint: 0.93 }], { ...minus, patchPct: 75 })],
  [trapMethod, bench([{ first: 0.45, second: 1.35, overprint: 1.55 }], minus)],
  [hueErrorMethod, bench([{ red: 0.15, green: 1.3, blue: 0.62 }], minus)],
  [colourStrengthMethod, bench([{ sample: 12 }, { sample: 12.4 }], { wavelengthNm: 540, standard: 15, substrate: 85 })],
  [coatWeightForDensityMethod, bench(drawdowns, { quantity: 'density', present: 1.2, target: 1.3 })],
  [opacityMethod, bench([{ overBlackY: 45.2, overWhiteY: 81.6 }], { whiteBackingY: 89 })],
  [whitenessMethod, bench([{ X: 93, Y: 98, Z: 104 }, { X: 92.6, Y: 97.7, Z: 103.5 }], { illuminant: 'D65', observer: '10' })],
  [glossMethod, bench([{ gloss: 52, glossAfter: 41 }, { gloss: 53, glossAfter: 42.5 }], { angleDeg: '60' })],
];

describe('every colour method', () => {
  it('has a sheet among these tests', () => {
    const colour = allMethods.filter((method) => method.group === 'colour').map((method) => method.id);
    expect(new Set(sheets.map(([method]) => method.id))).toEqual(new Set(colour));
  });

  it.each(sheets.map(([method, sheet]) => [method.id, method, sheet] as const))('%s gives each property it names and the dots of its strips', (_, method, sheet) => {
    const result = method.evaluate(sheet);
    expect(result.calculation).toBe(method.calculation);
    for (const { key } of method.properties) expect(Object.keys(result.results)).toContain(key);
    const headline = method.properties.filter((property) => property.headline);
    expect(headline.length).toBeGreaterThan(0);
    expect(headline.some(({ key }) => result.results[key]!.value !== null)).toBe(true);
    const [main] = method.properties.filter(({ readingsFigure }) => readingsFigure !== undefined);
    if (main) expect(result.figures.map(({ id }) => id)).toContain(main.readingsFigure);
  });

  it.each(sheets.map(([method]) => [method.id, method] as const))('%s has distinct keys and shortcuts, and its defaults among its choices', (_, method) => {
    for (const fields of [method.conditions, method.readings.fields]) {
      expect(new Set(fields.map((field) => field.key)).size).toBe(fields.length);
      for (const field of fields) {
        if (field.kind !== 'choice') continue;
        expect(new Set(field.choices.map((choice) => choice.shortcut)).size).toBe(field.choices.length);
        if (field.default !== undefined) expect(field.choices.map((choice) => choice.value)).toContain(field.default);
      }
    }
  });

  it.each(sheets.map(([method]) => [method.id, method] as const))('%s says which cell an empty sheet needs first', (_, method) => {
    const error = refusal(() => method.evaluate(bench([{}, {}], sheets.find(([other]) => other === method)![1].conditions)));
    expect(error.field).toMatch(/^rows\[0\]\./);
    const key = error.field.split('.')[1]!;
    expect(method.readings.fields.map((field) => field.key)).toContain(key);
  });
});

describe('refusals name the cell', () => {
  it.each([
    ['half a row', printContrastMethod, bench([{}, { solid: 1.5 }], minus), 'rows[1].tint'],
    ['a solid lighter than its tint', printContrastMethod, bench([{ solid: 1.5, tint: 0.9 }, {}, { solid: 0.9, tint: 1.5 }], minus), 'rows[2].tint'],
    ['absolute densities without the film', trapMethod, bench([{ first: 0.45, second: 1.35, overprint: 1.55 }], absolute), 'conditions.paperDensity'],
    ['a film subtracted twice', trapMethod, bench([{ first: 0.45, second: 1.35, overprint: 1.55 }], { ...minus, paperDensity: 0.08 }), 'conditions.paperDensity'],
    ['an overprint lighter than the first ink', trapMethod, bench([{ first: 0.9, second: 1.35, overprint: 0.7 }], minus), 'rows[0].overprint'],
    ['a negative absolute density', printDensityMethod, bench([{ cyan: 1.4 }, { cyan: -0.02 }], absolute), 'rows[1].cyan'],
    ['a tint denser than the solid', toneValueMethod, bench([{ nominalPct: 100, density: 1.2 }, { nominalPct: 50, density: 1.3 }], minus), 'rows[1].density'],
    ['a tone curve without its solid', toneValueMethod, bench([{ nominalPct: 50, density: 0.5 }], minus), 'rows[1].nominalPct'],
    ['absolute tone values without the film', toneValueMethod, bench([{ nominalPct: 100, density: 1.2 }, { nominalPct: 50, density: 0.5 }], absolute), 'rows[2].nominalPct'],
    ['a reference under another illuminant', colourMeasuredMethod, bench([{ L: 47, a: 61, b: 41 }], { ...red, illuminant: 'D65' }), 'conditions.illuminant'],
    ['a place lighter over black', opacityMethod, bench([{ overBlackY: 50, overWhiteY: 80 }, { overBlackY: 81, overWhiteY: 80 }], {}), 'rows[1].overBlackY'],
    ['a second grade without its observer', matchByEyeMethod, bench([{ grade: 4, secondGrade: 4 }], {}), 'conditions.secondObserver'],
    ['a grade between the steps', matchByEyeMethod, bench([{}, { grade: 4.2 }], {}), 'rows[1].grade'],
    ['a target that no coat weight reaches', coatWeightForDensityMethod, bench(drawdowns, { present: 1.2, target: 9 }), 'conditions.target'],
    ['a missing target', coatWeightForDensityMethod, bench(drawdowns, { present: 1.2 }), 'conditions.target'],
  ])('%s', (_what, method, sheet, field) => {
    const error = refusal(() => method.evaluate(sheet));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(/[.]$/u);
  });
});

describe('measured colour', () => {
  const rows = [{ L: 47, a: 61, b: 41 }, { L: 47.4, a: 60.5, b: 41.2 }, { L: 46.8, a: 61.4, b: 40.7 }];

  it('draws the tolerance from the limit on the formula that has one', () => {
    const { figures, notes } = colourMeasuredMethod.evaluate(bench(rows, red, [{ property: 'deltaECMC', lower: null, upper: 1.5, source: 'customer' }]));
    expect(figures.find(({ id }) => id === 'a-b')!.series.map(({ name }) => name)).toContain('ΔE CMC 1.5 at equal L*');
    expect(figures.find(({ id }) => id === 'drift')!.lines![0]!.value).toBe(1.5);
    expect(notes.join(' ')).toMatch(/ΔE CMC .* within the tolerance of 1.5/);
  });

  it('keeps the light with the result', () => {
    expect(colourMeasuredMethod.evaluate(bench(rows, { ...red, measurementCondition: 'M1' })).notes.join(' ')).toContain('D50, 2°, M1');
  });
});
