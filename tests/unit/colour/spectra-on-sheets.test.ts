import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { colourMeasuredMethod } from '../../../shared-lib/colour/colour-measured.method.ts';
import { colourStrengthMethod } from '../../../shared-lib/colour/colour-strength.method.ts';
import { printDensityMethod } from '../../../shared-lib/colour/print-density.method.ts';
import { tristimulusCalculation } from '../../../shared-lib/colour/tristimulus.calculation.ts';
import type { BenchReadings } from '../../../shared-lib/method/method.ts';
import type { ReferenceColour } from '../../../shared-lib/method/reference-colour.ts';
import { bench, type Cells } from './bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const grid = (from: number, to: number, step: number) => Array.from({ length: (to - from) / step + 1 }, (_, index) => from + index * step);
const ten = grid(400, 700, 10);
const curve = (edge: number, wavelengths = ten) => wavelengths.map((nm) => Number((4 + 60 / (1 + Math.exp(-(nm - edge) / 14))).toFixed(3)));
const text = (values: number[], frame = '400-700/10') => `${frame} %: ${values.join(' ')}`;
const light: Cells = { illuminant: 'D50', observer: '2', secondIlluminant: 'A', cmcL: 2, cmcC: 1, runUnit: 'm' };
const kept: ReferenceColour = { referenceId: 'rc1', name: 'Pouch red', spectrum: text(curve(585)), lab: null, illuminant: 'D50', observer: 2, condition: 'M1', geometry: null };

function sheet(rows: Cells[], more: Partial<BenchReadings> = {}, conditions: Cells = {}): BenchReadings {
  return { ...bench(rows, { reference: 'rc1', ...light, ...conditions }), references: { rc1: kept }, ...more };
}
const evaluate = (readings: BenchReadings) => colourMeasuredMethod.evaluate(readings);

describe('measured colour from spectra', () => {
  it('has the L*a*b* and X, Y, Z that tristimulus gives', () => {
    const { results } = evaluate(sheet([{ spectrum: text(curve(588)) }]));
    const own = runCalculation(tristimulusCalculation, { wavelengthsNm: ten, reflectance: curve(588), scale: 'percent', illuminant: 'D50', observer: 2 }).results;
    for (const key of ['X', 'Y', 'Z', 'L', 'a', 'b', 'C', 'h']) expect(results[key]!.value, key).toBeCloseTo(own[key]!.value!, 10);
  });

  it('is zero against itself, and the curves part nowhere', () => {
    const { results } = evaluate(sheet([{ spectrum: kept.spectrum! }]));
    expect(results.deltaE00!.value).toBe(0);
    expect(results.metamerismIndex!.value).toBeCloseTo(0, 10);
    expect(results.partingBand!.text).toBe('nowhere by 0.2 % or more');
    expect(results.direction!.text).toBe('the same within 0.05');
  });

  it('says in which band the curves part', () => {
    const narrow = curve(585).map((value, band) => (band >= 10 && band <= 14 ? value + [1, 3, 4, 3, 1][band - 10]! : value));
    expect(evaluate(sheet([{ spectrum: text(narrow) }])).results.partingBand!.text).toBe('510–530 nm');
  });

  it('is recomputed for the light of the sheet, whatever that of the reference', () => {
    const under = (illuminant: string) => evaluate(sheet([{ spectrum: text(curve(588)) }], {}, { illuminant })).results;
    expect(under('D65').deltaE00!.value).not.toBeCloseTo(under('D50').deltaE00!.value!, 2);
    expect(evaluate(sheet([{ spectrum: text(curve(588)) }], {}, { illuminant: 'A' })).notes.join(' ')).toContain('ΔE*ab under D65');
  });

  it('holds grids of another step or range against each other where both reach', () => {
    const fine = evaluate(sheet([{ spectrum: text(curve(588, grid(380, 730, 10)), '380-730/10') }]));
    const coarse = evaluate(sheet([{ spectrum: text(curve(588, grid(400, 700, 20)), '400-700/20') }]));
    expect(fine.figures.find(({ id }) => id === 'reflectance')!.series.map(({ points }) => points.length)).toEqual([31, 31]);
    expect(coarse.figures.find(({ id }) => id === 'reflectance')!.series.map(({ points }) => points.length)).toEqual([16, 16]);
    expect(coarse.flags.map(({ code }) => code)).toContain('coarse-steps');
    expect(Math.abs(coarse.results.deltaE00!.value! - fine.results.deltaE00!.value!)).toBeLessThan(0.3);
  });

  it('is refused when it was measured under another share of UV, which nothing can recompute', () => {
    const error = refusal(() => evaluate(sheet([{ spectrum: text(curve(588)) }], {}, { measurementCondition: 'M2' })));
    expect(error.field).toBe('conditions.illuminant');
    expect(error.message).toMatch(/M1.*M2.*no computation/);
  });

  it('draws the drift over the running length against its limit, and gives its rate', () => {
    const rows = [0, 2000, 4000, 6000].map((run, index) => ({ run, spectrum: text(curve(585 + index)) }));
    const { figures, results, notes } = evaluate({ ...sheet(rows), limits: [{ property: 'deltaE00', lower: null, upper: 1, source: '' }] });
    const drift = figures.find(({ id }) => id === 'drift')!;
    expect(drift.x).toMatchObject({ scale: 'linear', unit: 'm' });
    expect(drift.series[0]!.points.map(({ x }) => x)).toEqual([0, 2000, 4000, 6000]);
    expect(results.drift).toMatchObject({ unit: 'per 1000 m', n: 4, level: 0.95 });
    const readings = drift.series[0]!.points.map(({ y }) => y!);
    // Slope of four points at 0, 2, 4, 6 by hand: Σ(x − 3)y / 20.
    expect(results.drift!.value).toBeCloseTo((-3 * readings[0]! - readings[1]! + readings[2]! + 3 * readings[3]!) / 20, 10);
    expect(notes.join(' ')).toMatch(/ΔE00 rises by .* per 1000 m/);
  });

  it.each([
    ['a row with both', sheet([{ spectrum: text(curve(588)), L: 50 }]), 'rows[0].L'],
    ['half a row of L*a*b*', sheet([{ spectrum: text(curve(588)) }, { L: 50, a: 20 }]), 'rows[1].b'],
    ['a row without its place in the run', sheet([{ run: 10, spectrum: text(curve(588)) }, { spectrum: text(curve(588)) }]), 'rows[1].run'],
    ['a reference that is only named', sheet([{ spectrum: text(curve(588)) }], {}, { reference: 'an old card' }), 'conditions.referenceL'],
    ['illuminant C', sheet([{ spectrum: text(curve(588)) }], {}, { illuminant: 'C' }), 'conditions.illuminant'],
  ])('names the cell at fault: %s', (_what, readings, field) => {
    expect(refusal(() => evaluate(readings)).field).toBe(field);
  });

  it('shows other prints beside the reference; one under another light says why it is not compared', () => {
    const companion = (sampleCode: string, cells: Cells, conditions: Cells = light) => ({ testId: sampleCode, sampleCode, on: '2026-03-01', conditions, rows: [{ row: 'r1', values: cells }] });
    const { tables, notes } = evaluate(
      sheet([{ spectrum: text(curve(588)) }], { companions: { approved: companion('Q-1', { spectrum: text(curve(588)) }), control: companion('Q-2', { L: 50, a: 50, b: 30 }, { ...light, illuminant: 'D65' }) } }, { control: 's2' }),
    );
    const against = tables!.find(({ title }) => title === 'This print against')!;
    expect(against.rows.map(({ difference }) => (difference === null ? null : Number(difference) < 1e-9))).toEqual([false, true, null]);
    expect(against.rows[2]!.words).toMatch(/^not compared/);
    expect(notes.join(' ')).toMatch(/Not compared with control Q-2, 2026-03-01: It stands under D65, 2° and this print under D50, 2°/);
  });
});

describe('densities from spectra', () => {
  const rows = [{ spectrum: text(curve(588)) }, { spectrum: text(curve(590)) }];
  const paper = text(ten.map(() => 82));

  it('are minus film by the spectrum of the film, and say so', () => {
    const absolute = printDensityMethod.evaluate(bench(rows, { status: 'E', densityBasis: 'absolute' })).results;
    const minus = printDensityMethod.evaluate(bench(rows, { status: 'E', densityBasis: 'minus-paper', paperSpectrum: paper })).results;
    expect(absolute.magenta!.unit).toBe('absolute');
    expect(minus.magenta!.unit).toBe('minus paper');
    // A film of 82 % at every wavelength has the density −log10 0.82 through any filter.
    for (const key of ['cyan', 'magenta', 'yellow', 'visual']) expect(absolute[key]!.value! - minus[key]!.value!).toBeCloseTo(-Math.log10(0.82), 10);
  });

  it.each([
    ['minus film without the film', rows, { status: 'E', densityBasis: 'minus-paper' }, 'conditions.paperSpectrum'],
    ['absolute with the film', rows, { status: 'E', densityBasis: 'absolute', paperSpectrum: paper }, 'conditions.densityBasis'],
    ['typed and spectra on one sheet', [...rows, { cyan: 1.2 }], { status: 'E', densityBasis: 'absolute' }, 'rows[2].cyan'],
  ] as [string, Cells[], Cells, string][])('are refused: %s', (_what, given, conditions, field) => {
    expect(refusal(() => printDensityMethod.evaluate(bench(given, conditions))).field).toBe(field);
  });
});

describe('strength from spectra', () => {
  const grey = (percent: number) => text(ten.map(() => percent));

  it('is that of K/S whichever way it is taken, where the curves are level', () => {
    const ks = (percent: number) => (1 - percent / 100) ** 2 / (2 * (percent / 100));
    for (const strengthBy of ['summed', 'maximum', 'weighted']) {
      const { results } = colourStrengthMethod.evaluate(bench([{ spectrum: grey(12) }], { standardSpectrum: grey(15), substrateSpectrum: grey(85), strengthBy }));
      expect(results.strengthPct!.value, strengthBy).toBeCloseTo((100 * (ks(12) - ks(85))) / (ks(15) - ks(85)), 8);
    }
  });

  it('needs the standard as a spectrum, and typed reflectances their wavelength', () => {
    expect(refusal(() => colourStrengthMethod.evaluate(bench([{ spectrum: grey(12) }], {}))).field).toBe('conditions.standardSpectrum');
    expect(refusal(() => colourStrengthMethod.evaluate(bench([{ sample: 12 }], { standard: 15 }))).field).toBe('conditions.wavelengthNm');
  });
});
