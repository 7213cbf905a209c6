import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { fadeRetentionCalculation } from '../../../shared-lib/fade/fade-retention.calculation.ts';

const run = (input: unknown) => runCalculation(fadeRetentionCalculation, input);
const codes = (input: unknown) => run(input).flags.map(({ code }) => code);

describe('fade-retention from densities', () => {
  it('is the share of the density over the paper that is left', () => {
    // By hand: (0.98 − 0.08)/(1.28 − 0.08) = 0.75.
    const { results, notes, flags } = run({ density: { before: 1.28, after: 0.98, paper: 0.08 } });
    expect(results.retentionPct).toMatchObject({ unit: '%', low: null, high: null, n: 1 });
    expect(results.retentionPct!.value).toBeCloseTo(75, 10);
    expect(results.deltaE00!.value).toBeNull();
    expect(notes.join(' ')).toContain('Endpoint Retention 70 %: not reached.');
    expect(flags).toEqual([]);
  });

  it('gives replicate pairs a mean and a t interval', () => {
    // Retentions 70, 80, 90: mean 80, s 10, t(0.975; 2) = 4.30265 (t tables), half-width 24.841.
    const { results, table } = run({ density: { before: [1, 1, 1], after: [0.7, 0.8, 0.9], basis: 'minus-paper' } });
    expect(results.retentionPct).toMatchObject({ n: 3, level: 0.95 });
    expect(results.retentionPct!.value).toBeCloseTo(80, 10);
    expect(results.retentionPct!.high! - 80).toBeCloseTo(24.841, 3);
    expect(table).toHaveLength(3);
  });

  it('has a settable endpoint', () => {
    const input = { density: { before: 1, after: 0.85, basis: 'minus-paper' }, endpoint: { retentionPct: 90 } };
    expect(run(input).notes.join(' ')).toContain('Endpoint Retention 90 %: reached.');
  });

  it.each([
    ['an unstated basis', { before: 1, after: 0.9 }, ['basis-not-stated']],
    ['absolute without the paper', { before: 1, after: 0.9, basis: 'absolute' }, ['paper-not-subtracted']],
    ['a thin start', { before: 0.1, after: 0.09, basis: 'minus-paper' }, ['thin-start']],
    ['a density that rose', { before: 1, after: 1.1, basis: 'minus-paper' }, ['density-rose']],
    ['an end below the paper', { before: 1, after: 0.05, paper: 0.08 }, ['below-paper']],
  ])('flags %s', (_what, density, expected) => {
    expect(codes({ density })).toEqual(expected);
  });
});

describe('fade-retention from CIELAB', () => {
  it('gives ΔE, ΔEF and the grade', () => {
    const { results } = run({ lab: { before: [60, 0, 0], after: [56.6, 0, 0] }, endpoint: { greyScale: 3, deltaE00: 10 } });
    expect(results.deltaEab!.value).toBeCloseTo(3.4, 10);
    expect(results.deltaEF!.value).toBeCloseTo(3.4, 10);
    expect(results.greyScale).toMatchObject({ value: 3, text: '3' });
    expect(results.retentionPct!.value).toBeNull();
  });

  it('says for each endpoint whether it is reached', () => {
    const notes = run({ lab: { before: [60, 0, 0], after: [56.6, 0, 0] }, endpoint: { greyScale: 3, deltaE00: 10 } }).notes.join(' ');
    expect(notes).toContain('Endpoint Grey-scale grade 3: reached.');
    expect(notes).toContain('Endpoint ΔE00 10: not reached.');
  });

  it('takes the grades of the ends of the ΔEF interval', () => {
    const before = [[60, 0, 0], [60, 0, 0], [60, 0, 0]];
    const { results } = run({ lab: { before, after: [[57, 0, 0], [56.5, 0, 0], [56, 0, 0]] } });
    // ΔEF 3, 3.5, 4: 3.5 ± 4.30265·0.5/√3 = 2.26 … 4.74: grades 3-4 … 2-3.
    expect(results.greyScale).toMatchObject({ value: 3, low: 2.5, high: 3.5, n: 3 });
  });

  it('never lets an interval of a colour difference fall below 0', () => {
    const { results } = run({ lab: { before: [[60, 0, 0], [60, 0, 0]], after: [[60, 0, 0], [58, 0, 0]] } });
    expect(results.deltaEab!.low).toBe(0);
  });
});

describe('fade-retention with blue-wool references', () => {
  const lab = { before: [60, 0, 0], after: [56.6, 0, 0] };

  it.each([
    ['equal', [{ reference: 3, deltaEF: 3.4 }, { reference: 4, deltaEF: 1.7 }], { value: 3, bound: 'exact' }],
    ['between', [{ reference: 3, deltaEF: 5 }, { reference: 4, deltaEF: 2 }], { value: 3.5, low: 3, high: 4, bound: 'between' }],
    ['faster than all', [{ reference: 3, deltaEF: 2 }], { value: 3, bound: 'at-most' }],
    ['slower than all', [{ reference: 6, deltaEF: 9 }], { value: 6, bound: 'at-least' }],
  ])('%s', (_what, blueWool, expected) => {
    expect(run({ lab, blueWool }).results.lightFastness).toMatchObject(expected);
  });

  it('flags references out of order', () => {
    expect(codes({ lab, blueWool: [{ reference: 3, deltaEF: 2 }, { reference: 4, deltaEF: 5 }] })).toContain('blue-wool-order');
  });
});

describe('fade-retention refuses', () => {
  const lab = { before: [60, 0, 0], after: [56.6, 0, 0] };
  it.each([
    ['nothing to compare', {}, 'density'],
    ['a density of 0 before', { density: { before: 0, after: 0 } }, 'density.before'],
    ['a start no darker than the paper', { density: { before: 0.08, after: 0.08, paper: 0.08 } }, 'density.before'],
    ['paper with densities minus paper', { density: { before: 1, after: 0.9, paper: 0.08, basis: 'minus-paper' } }, 'density.paper'],
    ['lists of unequal length', { density: { before: [1, 1], after: [0.9] } }, 'density.after'],
    ['colours without partner', { lab: { before: [[60, 0, 0], [60, 0, 0]], after: [[50, 0, 0]] } }, 'lab.after'],
    ['a density above 6', { density: { before: 7, after: 1 } }, 'density.before'],
    ['text', { density: { before: '1', after: 1 } }, 'density.before'],
    ['NaN', { density: { before: 1, after: Number.NaN } }, 'density.after'],
    ['an empty list', { density: { before: [], after: [] } }, 'density.before'],
    ['an L* above the scale', { lab: { before: [160, 0, 0], after: [50, 0, 0] } }, 'lab.before[0]'],
    ['an endpoint of 100 %', { density: { before: 1, after: 0.9 }, endpoint: { retentionPct: 100 } }, 'endpoint.retentionPct'],
    ['a quarter grade', { lab, endpoint: { greyScale: 3.25 } }, 'endpoint.greyScale'],
    ['a blue-wool reference 9', { lab, blueWool: [{ reference: 9, deltaEF: 1 }] }, 'blueWool[0].reference'],
    ['a reference given twice', { lab, blueWool: [{ reference: 3, deltaEF: 1 }, { reference: 3, deltaEF: 1 }] }, 'blueWool[1].reference'],
    ['blue wool without the specimen', { density: { before: 1, after: 0.9 }, blueWool: [{ reference: 3, deltaEF: 1 }] }, 'lab'],
    ['an unknown field', { density: { before: 1, after: 0.9 }, limit: 70 }, ''],
    ['a level in percent', { density: { before: 1, after: 0.9 }, level: 95 }, 'level'],
  ])('%s', (_what, input, field) => {
    expect(() => run(input)).toThrow(InputError);
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

describe('fade-retention properties', () => {
  const density = fc.double({ min: 0.3, max: 3, noNaN: true });

  it('does not change when every density over the paper is scaled', () => {
    fc.assert(
      fc.property(density, density, fc.double({ min: 0.5, max: 1.5, noNaN: true }), (before, after, factor) => {
        const left = (scale: number) => run({ density: { before: before * scale, after: after * scale, basis: 'minus-paper' } }).results.retentionPct!.value!;
        expect(left(factor) / left(1)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('gives the same mean and interval for the pairs in any order', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(density, density), { minLength: 2, maxLength: 8 }), (pairs) => {
        const result = (list: [number, number][]) =>
          run({ density: { before: list.map(([b]) => b), after: list.map(([, a]) => a), basis: 'minus-paper' } }).results.retentionPct!;
        const one = result(pairs);
        const other = result([...pairs].reverse());
        expect(other.value! / one.value!).toBeCloseTo(1, 9);
        expect(other.high! / one.high!).toBeCloseTo(1, 9);
      }),
    );
  });

  it('grades never rise as ΔL* grows', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }), (one, two) => {
        const grade = (step: number) => run({ lab: { before: [60, 0, 0], after: [60 - step, 0, 0] } }).results.greyScale!.value!;
        expect(grade(Math.max(one, two))).toBeLessThanOrEqual(grade(Math.min(one, two)));
      }),
    );
  });
});
