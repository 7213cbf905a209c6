import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { colourDifferenceCalculation } from '../../../shared-lib/colour/colour-difference.calculation.ts';
import { differenceFormulaNames, differenceFormulas } from '../../../shared-lib/colour/difference-formulas.ts';
import type { Lab } from '../../../shared-lib/colour/lab.ts';
import { toleranceContour } from '../../../shared-lib/colour/tolerance-contour.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (input: object) => runCalculation(colourDifferenceCalculation, input);
const reference: Lab = [50, 20, 30];
const words = (sample: Lab | Lab[]) => run({ reference, sample }).results.direction!.text;

describe('differences in words', () => {
  it.each([
    [[48, 20, 30], 'darker'],
    [[52, 20, 30], 'lighter'],
    [[50, 25, 37.5], 'redder, yellower, stronger'],
    [[50, 16, 24], 'greener, bluer, duller'],
    [[50.01, 20, 30], 'the same within 0.05'],
  ] as [Lab, string][])('%j is %s', (sample, expected) => {
    expect(words(sample)).toBe(expected);
  });

  it('say when the scatter leaves none', () => {
    expect(words([[48, 20, 30], [52, 20, 30], [50, 20, 30]])).toBe('off in no clear direction');
  });

  it('leave out what the scatter of replicates leaves in doubt', () => {
    expect(words([[48, 20, 30], [47.8, 20.9, 30], [48.2, 19, 30]])).toBe('darker');
  });
});

describe('readings over a run', () => {
  const sample: Lab[] = [[49, 20, 31], [48.5, 20.5, 30.5], [48, 21, 30]];
  const { results, figures, notes, table } = run({ reference, sample, labels: ['start', 'middle', 'end'], tolerance: { limit: 1.5 } });

  it('give means with intervals, never below zero', () => {
    expect(results.deltaE00).toMatchObject({ n: 3, level: 0.95 });
    expect(results.deltaE00!.low!).toBeGreaterThanOrEqual(0);
    expect(results.deltaE00!.value).toBeCloseTo(table.reduce((sum, row) => sum + (row.deltaE00 as number), 0) / 3, 12);
  });

  it('draw their drift against the tolerance and say how many lie beyond', () => {
    const drift = figures.find(({ id }) => id === 'drift')!;
    const beyond = table.filter((row) => (row.deltaE00 as number) > 1.5).length;
    expect(drift.finding).toContain(`${beyond} of 3 lie beyond the limit of 1.5`);
    expect(drift.x.categories).toEqual(['start', 'middle', 'end']);
    expect(drift.lines![0]).toMatchObject({ value: 1.5, role: 'limit' });
  });

  it('say whether the mean keeps the tolerance', () => {
    expect(notes.join(' ')).toMatch(/ΔE00 \d\.\d\d lies (within|beyond) the tolerance of 1\.5/);
  });
});

describe('the tolerance around a reference', () => {
  it.each(differenceFormulaNames)('lies at its %s everywhere and closes', (on) => {
    const contour = toleranceContour(reference, { on, limit: 2 }, { l: 2, c: 1 });
    for (const { a, b } of contour) expect(differenceFormulas[on].of(reference, [50, a, b], { l: 2, c: 1 })).toBeCloseTo(2, 4);
    expect(contour[0]!.a).toBeCloseTo(contour.at(-1)!.a, 4);
  });

  it('is a circle for ΔE*ab', () => {
    for (const { a, b } of toleranceContour(reference, { on: 'deltaEab', limit: 2 }, { l: 2, c: 1 })) expect(Math.hypot(a - 20, b - 30)).toBeCloseTo(2, 5);
  });
});

describe('colours that cannot be', () => {
  it.each([
    ['outside the spectral locus', [50, 150, -20], 'no-real-colour'],
    ['with a negative Z', [30, 0, 120], 'no-real-colour'],
    ['lighter than white', [104, 0, 3], 'above-white'],
  ] as [string, Lab, string][])('%s are flagged and computed', (_what, sample, code) => {
    const { flags, results } = run({ reference, sample });
    expect(flags.map((flag) => flag.code)).toEqual([code]);
    expect(results.deltaE00!.value).toBeGreaterThan(0);
  });

  it('printed ones are not', () => {
    for (const sample of [[54, -37, -50], [47, 75, -6], [88, -6, 95], [16, 0, 0], [95, 0, -2], [24, 22, -46]] as Lab[]) expect(run({ reference, sample }).flags).toEqual([]);
  });
});

describe('reference and sample under different light', () => {
  const light = (illuminant: string, observer: number, condition?: string) => ({ illuminant, observer, ...(condition ? { condition } : {}) });

  it.each([
    ['illuminant', light('D50', 2), light('D65', 2), /Measure the sample under the reference's light, or compute both from their spectra/],
    ['observer', light('D50', 2), light('D50', 10), /Measure the sample under the reference's light, or compute both from their spectra/],
    // No spectrum tells what the print would reflect with another share of UV.
    ['measurement condition', light('D50', 2, 'M1'), light('D50', 2, 'M2'), /Measure the sample under the reference's light and geometry; no computation makes up for it/],
  ])('are refused with what to do: another %s', (_what, referenceLight, sampleLight, remedy) => {
    const error = refusal(() => run({ reference, sample: [49, 20, 30], referenceLight, sampleLight }));
    expect(error.field).toBe('sampleLight');
    expect(error.message).toMatch(remedy);
  });

  it('are taken when alike, and the light stays with the result', () => {
    expect(run({ reference, sample: [49, 20, 30], referenceLight: light('D50', 2), sampleLight: light('D50', 2, 'M1') }).notes.join(' ')).toContain('D50, 2°, M1');
  });
});
