import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { frictionCalculation } from '../../../shared-lib/mechanical/friction.calculation.ts';

const run = (input: unknown) => runCalculation(frictionCalculation, input);
const codes = (input: unknown) => run(input).flags.map(({ code }) => code);

function sled(force: (mm: number) => number): [number, number][] {
  return Array.from({ length: 1301 }, (_, index) => [index / 10, force(index / 10)]);
}
const smooth = (mm: number) => (mm < 2 ? 0.3 * mm : 0.4 + 0.2 * Math.exp(2 - mm));

describe('specimens', () => {
  test('are given as a list, as lists of forces or as one pair, with the same result', () => {
    const list = run({ sledMassG: 200, specimens: [{ staticN: 0.6, kineticN: 0.4 }, { staticN: 0.7, kineticN: 0.5 }] });
    expect(run({ sledMassG: 200, staticN: [0.6, 0.7], kineticN: [0.4, 0.5] }).results).toEqual(list.results);
    expect(list.results.static!.n).toBe(2);
    expect(list.results.static!.low!).toBeLessThan(list.results.static!.value!);
    expect(list.table).toHaveLength(2);
  });

  test('one alone has no interval, and a note says so', () => {
    const { results, notes } = run({ sledMassG: 200, staticN: 0.6, kineticN: 0.4 });
    expect(results.kinetic).toMatchObject({ low: null, high: null, level: null, n: 1 });
    expect(notes.join(' ')).toMatch(/no interval/);
  });

  test('only static forces leave the kinetic coefficient empty', () => {
    expect(run({ sledMassG: 200, staticN: [0.6, 0.7] }).results.kinetic).toMatchObject({ value: null, n: 0 });
  });

  test('may be traces, each with its figure', () => {
    const { figures, results, flags } = run({ sledMassG: 200, specimens: [{ points: sled(smooth) }, { points: sled((mm) => 1.1 * smooth(mm)) }] });
    expect(figures.map(({ id }) => id)).toEqual(['sled-1', 'sled-2', 'static-readings', 'kinetic-readings']);
    expect(results.static!.value).toBeCloseTo((1.05 * 0.6) / 1.96133, 3);
    expect(flags).toEqual([]);
  });
});

describe('flags', () => {
  test.each([
    ['forces exchanged', { sledMassG: 200, staticN: 0.4, kineticN: 0.6 }, ['kinetic-above-static']],
    ['another sled', { sledMassG: 500, staticN: 1.5, kineticN: 1.2 }, ['sled-mass']],
    ['grams-force typed as newtons', { sledMassG: 200, staticN: 60, kineticN: 40 }, ['unlikely']],
    ['a rise without a peak', { sledMassG: 200, points: sled((mm) => Math.min(0.4, 0.2 * mm)) }, ['no-first-peak']],
    ['stick-slip', { sledMassG: 200, points: sled((mm) => 0.2 + 0.04 * (mm % 10)) }, ['stick-slip']],
  ])('%s', (_, input, expected) => {
    expect(codes(input)).toEqual(expected);
  });

  test('ripples while the sled is still held are no static peak', () => {
    const points = sled((mm) => smooth(mm) + (mm > 0.3 && mm < 0.5 ? 0.05 : 0));
    expect(run({ sledMassG: 200, points }).results.static!.value).toBeCloseTo(0.6 / 1.96133, 3);
  });
});

describe('bad input is refused', () => {
  test.each([
    ['nothing', { sledMassG: 200 }, 'specimens'],
    ['two ways', { sledMassG: 200, staticN: 1, angleDeg: 20 }, 'angleDeg'],
    ['no sled', { staticN: 0.6, kineticN: 0.4 }, 'sledMassG'],
    ['a sled without mass', { sledMassG: 0, staticN: 0.6 }, 'sledMassG'],
    ['lists of different length', { sledMassG: 200, staticN: [0.6, 0.7], kineticN: [0.4] }, 'kineticN'],
    ['a negative force', { sledMassG: 200, specimens: [{ staticN: -0.6 }] }, 'specimens[0].staticN'],
    ['an empty specimen', { sledMassG: 200, specimens: [{}] }, 'specimens[0].staticN'],
    ['an angle of 90°', { specimens: [{ angleDeg: 90 }] }, 'specimens[0].angleDeg'],
    ['a trace that goes back', { sledMassG: 200, points: [[0, 1], [1, 2], [0.5, 1]] }, 'points[2][0]'],
    ['NaN', { sledMassG: Number.NaN, staticN: 1 }, 'sledMassG'],
    ['no travel', { sledMassG: 200, points: [[0, 1], [1, 2]], travelMm: 0 }, 'travelMm'],
  ])('%s', (_, input, field) => {
    try {
      run(input);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).field).toBe(field);
    }
  });
});

test('coefficients scale with the forces and against the sled', () => {
  const forces = fc.array(fc.double({ min: 0.05, max: 5, noNaN: true }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(forces, fc.constantFrom(0.5, 2, 4), (staticN, factor) => {
      const base = run({ sledMassG: 200, staticN }).results.static!.value!;
      expect(run({ sledMassG: 200, staticN: staticN.map((force) => force * factor) }).results.static!.value! / base).toBeCloseTo(factor, 9);
      expect(run({ sledMassG: 200 * factor, staticN }).results.static!.value! * factor).toBeCloseTo(base, 9);
    }),
  );
});

test('any trace gives finite numbers or a refusal, never NaN', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -1000, max: 5000 }).map((millinewtons) => millinewtons / 1000), { minLength: 2, maxLength: 60 }), (forces) => {
      const { results } = run({ sledMassG: 200, points: forces.map((force, index) => [index, force]) });
      expect(Number.isFinite(results.kinetic!.value)).toBe(true);
    }),
  );
});
