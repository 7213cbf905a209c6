import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bondStrengthCalculation } from '../../../shared-lib/bond-strength/bond-strength.calculation.ts';
import { FAILURE_MODES } from '../../../shared-lib/bond-strength/failure-mode.ts';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';

const run = (input: unknown) => runCalculation(bondStrengthCalculation, input);
const of = (mode: string, ...strengths: number[]) => strengths.map((strengthNPer15mm) => ({ strengthNPer15mm, mode }));

describe('nothing torn', () => {
  const result = run({ specimens: of('adhesive', 2.1, 2.4, 1.9, 2.2, 2.4) });

  test('gives the ordinary mean with its t interval', () => {
    // Mean 2.2, s = √(0.18/4) = 0.21213, t(0.975, 4) = 2.77645 (handbook table): 2.2 ± 0.26340.
    const { mean, standardDeviation, median, minimum } = result.results;
    expect(mean!.value).toBeCloseTo(2.2, 12);
    expect(standardDeviation!.value).toBeCloseTo(0.2121320, 6);
    expect(mean!.low).toBeCloseTo(2.2 - 0.26340, 4);
    expect(mean!.high).toBeCloseTo(2.2 + 0.26340, 4);
    expect(mean).toMatchObject({ unit: 'N/15 mm', level: 0.95, n: 5, bound: 'exact' });
    expect(median!.value).toBe(2.2);
    expect(minimum).toMatchObject({ value: 1.9, bound: 'exact' });
  });

  test('gives the share torn as 0 with the exact upper limit', () => {
    // Clopper–Pearson for 0 of 5: upper limit 1 − 0.025^(1/5) = 0.52182.
    expect(result.results.shareTorn).toMatchObject({ value: 0, low: 0 });
    expect(result.results.shareTorn!.high).toBeCloseTo(0.52182, 5);
  });

  test('counts the modes in the order of the catalogue', () => {
    expect(result.table.map((row) => row.mode)).toEqual([...FAILURE_MODES]);
    expect(result.table[0]).toMatchObject({ mode: 'adhesive', count: 5, share: 1, high: 1 });
    expect(result.flags).toEqual([]);
  });

  test('says nothing of torn films in its figure', () => {
    expect(result.figures[0]!.finding).toBe('Mean of 5 specimens 2.20 N/15 mm (95 % interval 1.94 to 2.46).');
  });

  test('takes forces on any width as well', () => {
    const wide = run({ specimens: [4.2, 4.8, 3.8, 4.4, 4.8].map((forceN) => ({ forceN, widthMm: 30, mode: 'adhesive' })) });
    expect(wide.results).toEqual(result.results);
  });

  test('even counts take the middle of the two middle specimens', () => {
    expect(run({ specimens: of('adhesive', 1, 2, 4, 8) }).results.median!.value).toBe(3);
  });
});

describe('torn specimens are lower bounds', () => {
  const exact = of('adhesive', 2.1, 2.4, 1.9, 2.2);

  test('a torn specimen raises the mean above the one that takes its reading at face value', () => {
    const torn = run({ specimens: [...exact, ...of('film-tear', 2.4)] }).results;
    const naive = run({ specimens: [...exact, ...of('adhesive', 2.4)] }).results;
    expect(torn.mean!.value!).toBeGreaterThan(naive.mean!.value!);
    expect(torn.mean!.bound).toBe('exact');
    expect(torn.mean!.high!).toBeGreaterThan(naive.mean!.high!);
    expect(torn.shareTorn!.value).toBeCloseTo(0.2, 12);
  });

  test('a stretched film counts like a torn one', () => {
    const torn = run({ specimens: [...exact, ...of('film-tear', 2.4)] }).results;
    expect(run({ specimens: [...exact, ...of('film-stretch', 2.4)] }).results).toEqual(torn);
  });

  test('all torn: at least, with the open side empty, a note and a flag', () => {
    const { results, flags, notes, figures } = run({ specimens: of('film-tear', 3, 4, 8) });
    expect(results.mean).toEqual({ value: 5, unit: 'N/15 mm', low: 5, high: null, level: null, n: 3, bound: 'at-least' });
    expect(results.median).toMatchObject({ value: 4, low: 4, high: null, bound: 'at-least' });
    expect(results.minimum).toMatchObject({ value: 3, low: 3, high: null, bound: 'at-least' });
    expect(results.standardDeviation!.value).toBeNull();
    expect(results.shareTorn!.value).toBe(1);
    expect(flags).toMatchObject([{ code: 'all-torn' }]);
    expect(notes[0]).toMatch(/at least/);
    expect(figures[0]!.series[0]!.points.every(({ open }) => open === 'up')).toBe(true);
    expect(figures[0]!.bands).toEqual([]);
  });

  test('the minimum is a range where the lowest reading is of a torn specimen', () => {
    expect(run({ specimens: [...of('film-tear', 1.5), ...exact] }).results.minimum).toMatchObject({ value: 1.7, low: 1.5, high: 1.9, bound: 'between' });
    expect(run({ specimens: [...of('film-tear', 1.9), ...exact] }).results.minimum).toMatchObject({ value: 1.9, bound: 'exact' });
  });

  test('the median is a bound where more than half outlasted the film', () => {
    const { results, notes } = run({ specimens: [...of('adhesive', 2), ...of('film-tear', 3, 4, 5, 6)] });
    expect(results.median).toMatchObject({ value: 4, low: 4, high: null, bound: 'at-least' });
    expect(notes.join(' ')).toMatch(/median of these specimens is at least/);
  });

  test('one torn and one peeled give no more than a bound', () => {
    expect(run({ specimens: [...of('adhesive', 2), ...of('film-tear', 4)] }).results.mean).toMatchObject({ value: 3, low: 3, high: null, bound: 'at-least' });
  });
});

describe('edges', () => {
  test('one specimen has a value and no interval', () => {
    const { results, notes } = run({ specimens: of('ink-split', 2.5) });
    expect(results.mean).toMatchObject({ value: 2.5, low: null, high: null, level: null, n: 1, bound: 'exact' });
    expect(results.standardDeviation!.value).toBeNull();
    expect(results.minimum!.value).toBe(2.5);
    expect(notes[0]).toMatch(/One specimen/);
  });

  test('one torn specimen is at least its reading', () => {
    expect(run({ specimens: of('film-tear', 2.5) }).results.mean).toMatchObject({ value: 2.5, low: 2.5, high: null, bound: 'at-least' });
  });

  test('zero spread gives an interval without width', () => {
    expect(run({ specimens: of('adhesive', 2, 2, 2) }).results.mean).toMatchObject({ value: 2, low: 2, high: 2 });
  });

  test('zero spread with a torn specimen gives a bound', () => {
    expect(run({ specimens: [...of('adhesive', 2, 2, 2), ...of('film-tear', 1)] }).results.mean!.bound).toBe('at-least');
    expect(run({ specimens: [...of('adhesive', 2, 2, 2), ...of('film-tear', 3)] }).results.mean!.value!).toBeGreaterThan(2);
  });

  test('a bond of zero is a reading', () => {
    expect(run({ specimens: of('adhesive', 0, 0.1, 0.2) }).results.minimum!.value).toBe(0);
  });
});

describe('the requirement', () => {
  test('gives the share that meets it, and a line in the figure', () => {
    const { results, figures } = run({ specimens: of('adhesive', 1.9, 2.1, 2.2, 2.4), requiredNPer15mm: 2 });
    expect(results.shareMeetingRequirement).toMatchObject({ value: 0.75, bound: 'exact', n: 4 });
    expect(figures[0]!.lines).toContainEqual({ name: 'required', axis: 'y', value: 2, role: 'limit' });
  });

  test('a film that gave way below it leaves it open and is flagged', () => {
    const { results, flags } = run({ specimens: [...of('adhesive', 1.9, 2.1, 2.2), ...of('film-tear', 1.5)], requiredNPer15mm: 2 });
    expect(results.shareMeetingRequirement).toMatchObject({ value: 0.625, bound: 'between' });
    expect(flags).toMatchObject([{ code: 'torn-below-requirement', where: 'specimens[3]' }]);
  });
});

describe('flags', () => {
  test('an outlier is flagged by Grubbs and still counts', () => {
    const { flags, results } = run({ specimens: of('adhesive', 2.1, 2.2, 2.15, 2.18, 2.12, 0.4) });
    expect(flags).toMatchObject([{ code: 'outlier', where: 'specimens[5]' }]);
    expect(results.mean!.n).toBe(6);
    expect(results.minimum!.value).toBe(0.4);
  });

  test('bonds that failed in several ways', () => {
    expect(run({ specimens: [...of('adhesive', 2.1, 2.2), ...of('ink-split', 2.2)] }).flags).toMatchObject([{ code: 'mixed-modes' }]);
    expect(run({ specimens: [...of('adhesive', 2.1, 2.2), ...of('film-tear', 2.2)] }).flags).toEqual([]);
  });
});

describe('bad input is refused', () => {
  test.each([
    ['no specimens', { specimens: [] }, 'specimens'],
    ['no strength', { specimens: [{ mode: 'adhesive' }] }, 'specimens[0].strengthNPer15mm'],
    ['a force without width', { specimens: [{ forceN: 2, mode: 'adhesive' }] }, 'specimens[0].widthMm'],
    ['a width without force', { specimens: [{ widthMm: 15, mode: 'adhesive' }] }, 'specimens[0].forceN'],
    ['strength and force', { specimens: [{ strengthNPer15mm: 2, forceN: 2, mode: 'adhesive' }] }, 'specimens[0].forceN'],
    ['strength and width', { specimens: [{ strengthNPer15mm: 2, widthMm: 15, mode: 'adhesive' }] }, 'specimens[0].widthMm'],
    ['no mode', { specimens: [{ strengthNPer15mm: 2 }] }, 'specimens[0].mode'],
    ['an unknown mode', { specimens: [{ strengthNPer15mm: 2, mode: 'peeled' }] }, 'specimens[0].mode'],
    ['a negative strength', { specimens: of('adhesive', 2, -1) }, 'specimens[1].strengthNPer15mm'],
    ['NaN', { specimens: of('adhesive', Number.NaN) }, 'specimens[0].strengthNPer15mm'],
    ['a width of zero', { specimens: [{ forceN: 2, widthMm: 0, mode: 'adhesive' }] }, 'specimens[0].widthMm'],
    ['a requirement of zero', { specimens: of('adhesive', 2), requiredNPer15mm: 0 }, 'requiredNPer15mm'],
  ])('%s', (_, input, field) => {
    expect(() => run(input)).toThrow(InputError);
    try {
      run(input);
    } catch (error) {
      expect((error as InputError).field).toBe(field);
      expect((error as InputError).message).toMatch(/\.$/);
    }
  });
});

describe('any set of specimens', () => {
  const specimen = fc.record({ strengthNPer15mm: fc.integer({ min: 1, max: 900 }).map((value) => value / 100), mode: fc.constantFrom(...FAILURE_MODES) });
  const sets = fc.array(specimen, { minLength: 1, maxLength: 12 });
  const close = (a: number | null, b: number | null) => (a === null || b === null ? a === b : Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a)));

  test('gives the same whatever their order', () => {
    fc.assert(
      fc.property(sets.chain((set) => fc.tuple(fc.constant(set), fc.shuffledSubarray(set, { minLength: set.length, maxLength: set.length }))), ([set, shuffled]) => {
        const one = run({ specimens: set }).results;
        const other = run({ specimens: shuffled }).results;
        for (const key of Object.keys(one)) {
          expect(other[key]!.bound).toBe(one[key]!.bound);
          for (const part of ['value', 'low', 'high'] as const) expect([key, part, close(one[key]![part], other[key]![part])]).toEqual([key, part, true]);
        }
      }),
    );
  });

  test('scales with its forces', () => {
    fc.assert(
      fc.property(sets, fc.constantFrom(0.5, 2, 4), (set, factor) => {
        const one = run({ specimens: set }).results;
        const other = run({ specimens: set.map((each) => ({ ...each, strengthNPer15mm: each.strengthNPer15mm * factor })) }).results;
        for (const key of ['mean', 'median', 'minimum', 'standardDeviation']) {
          const { value } = one[key]!;
          expect([key, close(value === null ? null : value * factor, other[key]!.value)]).toEqual([key, true]);
        }
      }),
    );
  });

  test('has its mean inside its interval and never below the mean of its readings', () => {
    fc.assert(
      fc.property(sets, (set) => {
        const { mean } = run({ specimens: set }).results;
        const naive = set.reduce((sum, { strengthNPer15mm }) => sum + strengthNPer15mm, 0) / set.length;
        expect(mean!.value!).toBeGreaterThanOrEqual(naive - 1e-9);
        if (mean!.low !== null) expect(mean!.value!).toBeGreaterThanOrEqual(mean!.low - 1e-9);
        if (mean!.high !== null) expect(mean!.value!).toBeLessThanOrEqual(mean!.high + 1e-9);
      }),
    );
  });
});

test('the figure says in how many the film gave way first', () => {
  const finding = (specimens: object[]) => run({ specimens }).figures[0]!.finding;
  expect(finding([...of('adhesive', 2.1, 2.4), ...of('film-tear', 2.6)])).toMatch(/^Mean of 3 specimens .*; in 1 of them the film gave way first\.$/);
  expect(finding(of('film-tear', 2.6, 2.5))).toMatch(/; in each the film gave way first\.$/);
  expect(finding(of('adhesive', 2.1))).toBe('One specimen: 2.1 N/15 mm.');
});
