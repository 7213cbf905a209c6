import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { tapeAdhesionCalculation } from '../../../shared-lib/mechanical/tape-adhesion.calculation.ts';
import { tapeAdhesionMethod } from '../../../shared-lib/mechanical/tape-adhesion.method.ts';
import { bench, type Cells } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (input: unknown) => runCalculation(tapeAdhesionCalculation, input);

describe('tape adhesion of several specimens', () => {
  it('is the median grade with its range, the worse of two middle ones, and the mean retained', () => {
    const { results, table } = run({ specimens: [{ removedPct: 0 }, { removedPct: 2 }, { removedPct: 8 }, { removedPct: 40 }] });
    expect(results.gradeD3359).toMatchObject({ value: 3, text: '3B', low: 1, high: 5, level: null, n: 4 });
    expect(results.gradeISO2409).toMatchObject({ value: 2, low: 0, high: 4 });
    expect(results.retainedPct!.value).toBeCloseTo(100 - 12.5, 12);
    expect(results.retainedPct!.high).toBe(100);
    expect(table.map((row) => row.gradeD3359)).toEqual(['5B', '4B', '3B', '1B']);
  });

  it('by squares pools them while they differ by chance only', () => {
    const { results, flags } = run({ specimens: [{ squares: { total: 100, removed: 3 } }, { squares: { total: 100, removed: 5 } }] });
    expect(results.retainedPct).toMatchObject({ value: 96, n: 200 });
    expect(flags.map(({ code, where }) => [code, where])).toEqual([['band-edge', 'specimens[1]']]);
  });

  it('by squares that differ more takes the scatter of the specimens instead', () => {
    const { results, flags } = run({ specimens: [3, 17, 2].map((removed) => ({ squares: { total: 100, removed } })) });
    // By hand: mean 7.3333, s 8.3865, t(0.975, 2) = 4.30265: 7.3333 ± 20.833.
    expect(results.retainedPct!.n).toBe(3);
    expect(results.retainedPct!.low).toBeCloseTo(100 - 28.1665, 3);
    expect(flags.map(({ code }) => code)).toEqual(['uneven-specimens']);
  });

  it('says that an uncut print has no lattice to be graded by', () => {
    expect(run({ removedPct: 1, cuts: 'none' }).notes.join(' ')).toContain('serve as a scale only');
    expect(run({ removedPct: 1 }).notes.join(' ')).not.toContain('serve as a scale only');
  });

  it.each([
    ['nothing', {}, 'removedPct'],
    ['more than 100 %', { removedPct: 100.1 }, 'removedPct'],
    ['less than nothing', { removedPct: -1 }, 'removedPct'],
    ['more squares than there are', { squares: { total: 25, removed: 26 } }, 'squares.removed'],
    ['half a square', { squares: { total: 25, removed: 2.5 } }, 'squares.removed'],
    ['no squares', { squares: { total: 0, removed: 0 } }, 'squares.total'],
    ['both forms', { removedPct: 4, squares: { total: 25, removed: 1 } }, 'removedPct'],
    ['one specimen and a list', { removedPct: 4, specimens: [{ removedPct: 4 }] }, 'specimens'],
    ['an empty specimen', { specimens: [{ removedPct: 4 }, {}] }, 'specimens[1].removedPct'],
    ['too many squares in a list', { specimens: [{ squares: { total: 25, removed: 30 } }] }, 'specimens[0].squares.removed'],
    ['text', { removedPct: '4' }, 'removedPct'],
  ])('refuses %s', (_, input, field) => {
    expect(refusal(() => run(input)).field).toBe(field);
  });
});

describe('the bench sheet of tape adhesion', () => {
  it('takes the number of squares from the cuts', () => {
    const { results } = tapeAdhesionMethod.evaluate(bench([{ squaresRemoved: 4 }, {}, { squaresRemoved: 0 }], { cuts: 'eleven-1mm' }));
    expect(results.retainedPct).toMatchObject({ value: 98, n: 200 });
    expect(tapeAdhesionMethod.evaluate(bench([{ squaresRemoved: 1 }], { cuts: 'six-2mm' })).results.gradeD3359!.text).toBe('4B');
  });

  it('puts flags to their row', () => {
    const { flags } = tapeAdhesionMethod.evaluate(bench([{}, { removedPct: 15 }], { cuts: 'none' }));
    expect(flags[0]).toMatchObject({ where: 'rows[1].removedPct' });
    expect(flags[0]!.text).toMatch(/^Specimen 2 lost exactly 15 %/);
  });

  it.each<[string, Cells[], Cells, string]>([
    ['an empty sheet', [{}, {}], {}, 'rows[0].removedPct'],
    ['a failure without a reading', [{}, { parted: 'film' }], {}, 'rows[1].removedPct'],
    ['squares without their number', [{ squaresRemoved: 3 }], { cuts: 'none' }, 'rows[0].squaresTotal'],
    ['a number of squares alone', [{ squaresTotal: 25 }], {}, 'rows[0].squaresRemoved'],
    ['too many squares', [{}, { squaresRemoved: 26 }], { cuts: 'six-2mm' }, 'rows[1].squaresRemoved'],
    ['half a square', [{ squaresRemoved: 1.5 }], { cuts: 'six-2mm' }, 'rows[0].squaresRemoved'],
    ['percent and squares', [{ removedPct: 4, squaresRemoved: 1 }], { cuts: 'six-2mm' }, 'rows[0].removedPct'],
  ])('refuses %s at its cell', (_, rows, conditions, field) => {
    expect(refusal(() => tapeAdhesionMethod.evaluate(bench(rows, conditions))).field).toBe(field);
  });
});

it('refuses an interval of a picture that does not hold its percent', () => {
  expect(refusal(() => run({ removedPct: 10, removedLowPct: 11, removedHighPct: 12 })).field).toBe('removedLowPct');
  expect(refusal(() => run({ specimens: [{ removedPct: 10, removedLowPct: 8, removedHighPct: 9 }] })).field).toBe('specimens[0].removedHighPct');
});

it('calls a specimen without a place by its number on the sheet', () => {
  const { table } = tapeAdhesionMethod.evaluate(bench([{}, { removedPct: 1 }, { label: 'lane 3', removedPct: 2 }]));
  expect(table.map(({ specimen }) => specimen)).toEqual(['2', 'lane 3']);
});
