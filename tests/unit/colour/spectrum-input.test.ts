import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { densityCalculation } from '../../../shared-lib/colour/density.calculation.ts';
import { metamerismCalculation } from '../../../shared-lib/colour/metamerism.calculation.ts';
import { tristimulusCalculation } from '../../../shared-lib/colour/tristimulus.calculation.ts';
import { refusal } from '../surface-energy/refusal.ts';

const steps = (from: number, to: number, step: number) => Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
const ten = steps(380, 730, 10);
const print = (at: number) => 0.05 + 0.7 / (1 + Math.exp(-(at - 590) / 20));
const input = (wavelengthsNm: number[], reflectance: unknown = wavelengthsNm.map(print), more = {}) => ({ wavelengthsNm, reflectance, illuminant: 'D50', observer: 2, ...more });
const run = (given: unknown) => runCalculation(tristimulusCalculation, given);
const codes = (given: unknown) => run(given).flags.map(({ code }) => code);

describe('a spectrum that cannot be used is refused', () => {
  it.each([
    ['a missing band', input(ten, ten.slice(1).map(print)), 'reflectance', /35 readings for 36 wavelengths; some are missing/],
    ['an extra band', input(ten, [...ten, 740].map(print)), 'reflectance', /37 readings for 36 wavelengths; there are too many/],
    ['a missing band in one of several spectra', input(ten, [ten.map(print), ten.slice(1).map(print)]), 'reflectance[1]', /some are missing/],
    ['reversed wavelengths', input([...ten].reverse()), 'wavelengthsNm', /must ascend/],
    ['a gap', input(ten.filter((at) => at !== 500)), 'wavelengthsNm[12]', /from 490 to 510 nm/],
    ['a wavelength twice', input([380, 390, 390, ...steps(400, 730, 10)]), 'wavelengthsNm[2]', /equal steps/],
    ['steps of 15 nm', input(steps(380, 740, 15)), 'wavelengthsNm', /20 or 10 nm on whole tens, or by 5 nm or less/],
    ['10 nm steps beside the tens', input(steps(385, 735, 10)), 'wavelengthsNm', /whole tens/],
    ['a spectrum that begins at 420 nm', input(steps(420, 730, 10)), 'wavelengthsNm', /from 400 to 700 nm at least/],
    ['a spectrum that ends at 690 nm', input(steps(400, 690, 10)), 'wavelengthsNm', /from 400 to 700 nm at least/],
    ['a scale that cannot be told', input(ten, ten.map((at) => (at > 600 ? 1.05 : 0.9))), 'scale', /1\.05 % of a black or 105 % of a fluorescent/],
    ['reflectance below zero', input(ten, ten.map((at) => (at === 400 ? -0.2 : print(at)))), 'reflectance[2]', /-20\.0 %/],
    ['reflectance that no fluorescence reaches', input(ten, ten.map((at) => (at === 400 ? 250 : 40))), 'reflectance[2]', /250\.0 %/],
    ['an illuminant without tables', input(ten, undefined, { illuminant: 'D55' }), 'illuminant', /one of A, D50, D65, F2, F11/],
    ['an observer of 4°', input(ten, undefined, { observer: 4 }), 'observer', /one of 2, 10/],
    ['text in a spectrum', input(ten, ten.map((at) => (at === 400 ? '0.5' : 0.5))), 'reflectance[2]', /must be/],
    ['a field that is not known', input(ten, undefined, { bandpass: 10 }), '', /bandpass/],
  ])('%s', (_what, given, field, message) => {
    const error = refusal(() => run(given));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });
});

describe('a doubtful spectrum is flagged', () => {
  it('short of 380–780 nm', () => {
    expect(codes(input(steps(360, 780, 10)))).toEqual([]);
    expect(codes(input(ten))).toEqual(['short-range']);
    expect(run(input(steps(400, 700, 10))).flags[0]!.text).toMatch(/400–700 nm.*first and last reading/);
  });

  it('at 20 nm', () => {
    expect(codes(input(steps(380, 780, 20)))).toEqual(['coarse-steps']);
  });

  it('above 100 %: fluorescence', () => {
    expect(codes(input(steps(380, 780, 10), steps(380, 780, 10).map((at) => (at === 440 ? 104 : 88))))).toEqual(['fluorescence']);
    expect(codes(input(steps(380, 780, 10), steps(380, 780, 10).map((at) => (at === 440 ? 1.04 : 0.88)), { scale: 'fraction' }))).toEqual(['fluorescence']);
  });

  it('a hair below zero: the zero of the instrument', () => {
    expect(codes(input(steps(380, 780, 10), steps(380, 780, 10).map((at) => (at === 400 ? -0.002 : print(at)))))).toEqual(['below-zero']);
  });
});

describe('percent and fractions', () => {
  it('give the same colour, and say how they were read', () => {
    const fractions = run(input(ten));
    const percent = run(input(ten, ten.map((at) => 100 * print(at))));
    expect(percent.results.b!.value).toBeCloseTo(fractions.results.b!.value!, 10);
    expect(fractions.notes[0]).toContain('fractions');
    expect(percent.notes[0]).toContain('percent');
  });

  it('follow the stated scale: a black of 0.8 % is not one of 80 %', () => {
    expect(run(input(ten, ten.map(() => 0.8), { scale: 'percent' })).results.Y!.value).toBeCloseTo(0.8, 10);
    expect(run(input(ten, ten.map(() => 0.8))).results.Y!.value).toBeCloseTo(80, 10);
  });
});

describe('replicate spectra', () => {
  const three = run(input(ten, [588, 590, 593].map((edge) => ten.map((at) => print(at - edge + 590)))));

  it('give means with intervals', () => {
    const { L, C, h } = three.results;
    for (const result of [L!, C!, h!]) {
      expect(result.n).toBe(3);
      expect(result.low!).toBeLessThan(result.value!);
      expect(result.high!).toBeGreaterThan(result.value!);
    }
    expect(three.table).toHaveLength(3);
    expect(three.figures[0]!.series).toHaveLength(3);
  });

  it('have a mean hue about 0° where they lie on both sides of it', () => {
    const tilt = (by: number) => ten.map((at) => 0.3 + 0.25 * (at > 590 ? 1 : 0) + by * (at < 480 ? 1 : 0));
    const both = run(input(ten, [tilt(0.05), tilt(0.08), tilt(0.11), tilt(0.14)]));
    const hues = both.table.map(({ h }) => h as number);
    expect(Math.min(...hues)).toBeLessThan(60);
    expect(Math.max(...hues)).toBeGreaterThan(300);
    const { value, low, high } = both.results.h!;
    expect(value! < 60 || value! > 300).toBe(true);
    expect(high! - low!).toBeLessThan(120);
  });
});

describe('density from spectra and as read', () => {
  const density = (given: object) => runCalculation(densityCalculation, given);

  it.each([
    ['neither spectrum nor reading', { status: 'E' }, 'read'],
    ['a spectrum without wavelengths', { status: 'E', reflectance: ten.map(print) }, 'wavelengthsNm'],
    ['a black without any light', { status: 'E', wavelengthsNm: ten, reflectance: ten.map(() => 0) }, 'reflectance'],
    ['a basis that is not stated', { status: 'E', read: { cyan: 1.4 } }, 'basis'],
    ['a negative absolute density', { status: 'E', basis: 'absolute', read: { cyan: [1.4, -0.03] } }, 'read.cyan[1]'],
    ['a negative density that no slip explains', { status: 'E', basis: 'minus-paper', read: { cyan: -0.4 } }, 'read.cyan'],
    ['a paper subtracted twice', { status: 'E', basis: 'minus-paper', read: { cyan: 1.4 }, paper: { cyan: 0.1 } }, 'paper'],
    ['a paper without the channel read', { status: 'E', read: { cyan: 1.4 }, paper: { magenta: 0.1 } }, 'paper.cyan'],
    ['a cyan density of status visual', { status: 'visual', basis: 'absolute', read: { cyan: 1.4 } }, 'read.cyan'],
    ['a spectrum of the paper with another length', { status: 'E', wavelengthsNm: ten, reflectance: ten.map(print), paper: [0.8, 0.8] }, 'paper'],
  ])('refuses %s', (_what, given, field) => {
    expect(refusal(() => density(given)).field).toBe(field);
  });

  it('keeps the basis with each number', () => {
    expect(density({ status: 'E', basis: 'absolute', read: { cyan: [1.4, 1.42, 1.41] } }).results.cyan).toMatchObject({ unit: 'absolute', n: 3 });
    const over = density({ status: 'E', read: { cyan: [1.4, 1.42] }, paper: { cyan: 0.1 } });
    expect(over.results.cyan!.unit).toBe('minus paper');
    expect(over.results.cyan!.value).toBeCloseTo(1.31, 10);
    expect(over.table[0]).toMatchObject({ basis: 'minus-paper', status: 'E' });
  });

  it('flags a density just below the paper', () => {
    expect(density({ status: 'E', basis: 'minus-paper', read: { yellow: -0.01 } }).flags[0]).toMatchObject({ code: 'negative-density', where: 'yellow' });
  });
});

describe('metamerism', () => {
  const pair = { wavelengthsNm: ten, standard: ten.map(print), sample: ten.map((at) => print(at) + 0.02 * Math.sin(at / 15)) };

  it('is nothing for one and the same spectrum', () => {
    const { results } = runCalculation(metamerismCalculation, { ...pair, sample: pair.standard });
    expect(results.index!.value).toBeCloseTo(0, 12);
    expect(results.differenceOfDifferences!.value).toBeCloseTo(0, 12);
  });

  it('names where the curves part most', () => {
    const sample = pair.standard.map((value, band) => (ten[band] === 480 ? value + 0.06 : value));
    const { figures } = runCalculation(metamerismCalculation, { ...pair, sample });
    expect(figures.find(({ id }) => id === 'reflectance-difference')!.finding).toMatch(/480 nm.*6\.00 percent points more/);
  });

  it('flags a pair that does not match to begin with, and refuses one light for both', () => {
    const sample = pair.standard.map((value) => value * 0.8);
    expect(runCalculation(metamerismCalculation, { ...pair, sample }).flags.map(({ code }) => code)).toContain('no-match');
    expect(refusal(() => runCalculation(metamerismCalculation, { ...pair, reference: 'A', test: 'A' })).field).toBe('test');
  });
});
