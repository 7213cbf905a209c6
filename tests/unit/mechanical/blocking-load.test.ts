import { describe, expect, test } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { blockingLoadCalculation } from '../../../shared-lib/mechanical/blocking-load.calculation.ts';

const run = (input: unknown) => runCalculation(blockingLoadCalculation, input);

describe('blocking load', () => {
  test('of separated specimens is their mean with a t interval', () => {
    // Mean 50 g, s = 10 g, t(0.975, 2) = 4.30265 (handbook table): 50 ± 24.841.
    const { load, pressure, maximum } = run({ specimens: [{ loadG: 40 }, { loadG: 50 }, { loadG: 60 }] }).results;
    expect(load!.value).toBeCloseTo(50, 12);
    expect(load!.high).toBeCloseTo(74.841, 3);
    expect(pressure!.high).toBeCloseTo(74.841 * 0.980665, 3);
    expect(maximum).toMatchObject({ value: 60, bound: 'exact' });
  });

  test('counts specimens that did not separate as lower bounds', () => {
    const loads = [120, 150, 140, 130];
    const { results, notes, figures } = run({ specimens: [...loads.map((loadG) => ({ loadG })), { loadG: 150, separated: false }] });
    expect(results.load!.value!).toBeGreaterThan(138);
    expect(results.maximum).toMatchObject({ value: 150, bound: 'at-least' });
    expect(notes[0]).toMatch(/^1 of 5 specimens did not separate/);
    expect(figures[0]!.series[0]!.points[4]).toMatchObject({ open: 'up' });
  });

  test('where none separated is at least the load', () => {
    expect(run({ specimens: [{ loadG: 200, separated: false }, { loadG: 200, separated: false }] }).results.load).toMatchObject({ value: 200, high: null, bound: 'at-least' });
  });

  test('flags another area, loads beyond the standard and tests stopped early', () => {
    const { flags } = run({ specimens: [{ loadG: 250 }, { loadG: 90, separated: false }], areaCm2: 50, limitG: 200 });
    expect(flags.map(({ code }) => code)).toEqual(['area', 'beyond-limit', 'stopped-early']);
  });

  test.each([
    ['no specimens', { specimens: [] }, 'specimens'],
    ['a negative load', { specimens: [{ loadG: -1 }] }, 'specimens[0].loadG'],
    ['NaN', { specimens: [{ loadG: Number.NaN }] }, 'specimens[0].loadG'],
    ['no area', { specimens: [{ loadG: 1 }], areaCm2: 0 }, 'areaCm2'],
    ['a word for separated', { specimens: [{ loadG: 1, separated: 'yes' }] }, 'specimens[0].separated'],
  ])('refuses %s', (_, input, field) => {
    try {
      run(input);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).field).toBe(field);
    }
  });
});
