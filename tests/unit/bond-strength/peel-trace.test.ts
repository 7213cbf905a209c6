import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { peelTraceCalculation } from '../../../shared-lib/bond-strength/peel-trace.calculation.ts';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';

type Points = [number, number][];
const run = (input: unknown) => runCalculation(peelTraceCalculation, input);
const codes = (input: unknown) => run(input).flags.map((flag) => flag.code);

/** Points from 0 to `toMm`, `perMm` of them in a millimetre. */
function trace(toMm: number, perMm: number, force: (mm: number) => number): Points {
  return Array.from({ length: toMm * perMm + 1 }, (_, index) => [index / perMm, force(index / perMm)]);
}

/** Slack, an initial peak of 4 N, then a plateau about 2 N. */
const peel = (mm: number) => (mm < 5 ? (mm < 3 ? 0.02 : 2 * (mm - 3)) : mm < 8 ? 4 - (2 / 3) * (mm - 5) : 2 + 0.1 * Math.sin(mm));
const PEEL = trace(100, 10, peel);

function problem(input: unknown): InputError {
  try {
    run(input);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('expected to be refused');
}

describe('the plateau', () => {
  test('is proposed as the central 80 % of the travel under load, after slack and initial peak', () => {
    const { results, flags, notes } = run({ widthMm: 15, points: PEEL });
    expect(results.plateauFrom!.value).toBeGreaterThan(12);
    expect(results.plateauFrom!.value).toBeLessThan(15);
    expect(results.plateauTo!.value).toBeGreaterThan(88);
    expect(results.plateauTo!.value).toBeLessThan(92);
    expect(results.mean!.value).toBeCloseTo(2, 1);
    expect(results.maximum!.value).toBeLessThanOrEqual(2.1);
    expect(flags).toEqual([]);
    expect(notes[0]).toMatch(/central 80 %/);
  });

  test('ends where the film broke, and the break is flagged', () => {
    const points = trace(100, 10, (mm) => (mm > 60 ? 0.01 : peel(mm)));
    const { results, flags } = run({ widthMm: 15, points });
    expect(results.plateauTo!.value).toBeLessThan(58);
    expect(results.minimum!.value).toBeGreaterThan(1.8);
    expect(flags).toMatchObject([{ code: 'film-broke', text: expect.stringMatching(/at 60\.0 mm/) }]);
  });

  test('begins later where the initial peak lasts longer', () => {
    const points = trace(100, 10, (mm) => (mm < 20 ? 4 : 2));
    expect(run({ widthMm: 15, points }).results.maximum!.value).toBe(2);
  });

  test('set from and to, both ends included', () => {
    const { results, notes } = run({ widthMm: 15, points: [[0, 1], [1, 2], [2, 3], [3, 4]], fromMm: 1, toMm: 2 });
    expect(results.mean).toMatchObject({ value: 2.5, n: 2 });
    expect(notes[0]).toMatch(/was set to 1\.00 to 2\.00 mm/);
  });

  test('set by what is discarded; a side left out reaches to the end', () => {
    const points: Points = [[10, 1], [11, 2], [12, 3], [13, 4]];
    expect(run({ widthMm: 15, points, discardStartMm: 1 }).results.mean).toMatchObject({ value: 3, n: 3 });
    expect(run({ widthMm: 15, points, discardEndMm: 1 }).results.mean).toMatchObject({ value: 2, n: 3 });
    expect(run({ widthMm: 15, points, discardStartMm: 1, discardEndMm: 1 }).results.mean).toMatchObject({ value: 2.5, n: 2 });
  });
});

describe('results over the plateau', () => {
  const points: Points = [[0, 1], [1, 4], [2, 2], [3, 3]];
  const whole = { widthMm: 30, points, discardStartMm: 0 };

  test('mean, median, extremes and standard deviation', () => {
    const { results, table } = run(whole);
    expect(results.mean!.value).toBe(2.5);
    expect(results.median!.value).toBe(2.5);
    expect(results.minimum!.value).toBe(1);
    expect(results.maximum!.value).toBe(4);
    expect(results.standardDeviation!.value).toBeCloseTo(Math.sqrt(5 / 3), 12);
    expect(results.strength).toMatchObject({ value: 1.25, unit: 'N/15 mm' });
    expect(table[3]).toEqual({ quantity: 'maximum', forceN: 4, strength: 2, unit: 'N/15 mm' });
  });

  test('the tare is taken off', () => {
    expect(run({ ...whole, tareN: 0.5 }).results.mean!.value).toBe(2);
    expect(run({ ...whole, tareN: -0.5 }).results.minimum!.value).toBe(1.5);
  });

  test('the energy follows the geometry and the result says which', () => {
    // 2.5 N on 30 mm is 83.3 N/m: G = 2F/b = 166.7 J/m² in T-peel, F/b = 83.3 J/m² at 90°.
    expect(run(whole).results.peelEnergy!.value).toBeCloseTo(500 / 3, 9);
    expect(run({ ...whole, geometry: '180-degree' }).results.peelEnergy!.value).toBeCloseTo(500 / 3, 9);
    const upright = run({ ...whole, geometry: '90-degree' });
    expect(upright.results.peelEnergy!.value).toBeCloseTo(250 / 3, 9);
    expect(upright.notes.join(' ')).toMatch(/G = F\/b for a 90° peel/);
    expect(run({ ...whole, speedMmPerMin: 254 }).notes.join(' ')).toMatch(/the bond opens at 127 mm\/min/);
  });

  test('fewer than twenty points give a mean without an interval and say so', () => {
    const { results, flags, notes } = run(whole);
    expect(results.mean).toMatchObject({ low: null, high: null, level: null });
    expect(flags.map(({ code }) => code)).toContain('few-points');
    expect(notes.join(' ')).toMatch(/no interval: fewer than 20/);
  });
});

describe('the interval of the mean', () => {
  /** Slow random waves, the same ones however densely they are sampled: autocorrelated over about 2 mm. */
  const waves = (mm: number) => 2 + [0.31, 0.43, 0.59, 0.77, 0.97].reduce((sum, k, i) => sum + 0.05 * Math.sin(k * mm * 2 + i * i), 0);

  test('does not shrink when the same trace is sampled more densely', () => {
    const width = (perMm: number) => {
      const { low, high } = run({ widthMm: 15, points: trace(100, perMm, waves), fromMm: 10, toMm: 90 }).results.mean!;
      return high! - low!;
    };
    expect(width(100) / width(10)).toBeGreaterThan(0.9);
    expect(width(100) / width(10)).toBeLessThan(1.1);
    // What s/√n would claim: 8001 points as if independent.
    const { results } = run({ widthMm: 15, points: trace(100, 100, waves), fromMm: 10, toMm: 90 });
    const naive = (2 * 1.96 * results.standardDeviation!.value!) / Math.sqrt(results.standardDeviation!.n);
    expect(width(100)).toBeGreaterThan(3 * naive);
  });

  test('has no width where the force has no spread', () => {
    expect(run({ widthMm: 15, points: trace(50, 10, () => 2.3) }).results.mean).toMatchObject({ value: 2.3, low: 2.3, high: 2.3 });
  });
});

describe('flags', () => {
  test('drift along the plateau', () => {
    // 0.01 N/mm over the central 80 of 100 mm.
    const { flags } = run({ widthMm: 15, points: trace(100, 10, (mm) => 1 + mm / 100) });
    expect(flags).toMatchObject([{ code: 'drift', text: expect.stringMatching(/rises by 0\.80 N \(53 %/) }]);
  });

  test('a load cell at the end of its range', () => {
    const points = trace(100, 10, (mm) => Math.min(2.05, 2 + 0.1 * Math.sin(mm)));
    expect(codes({ widthMm: 15, points })).toEqual(['saturation']);
    expect(codes({ widthMm: 15, points: trace(100, 10, (mm) => Number((2 + 0.1 * Math.sin(mm)).toFixed(2))) })).toEqual([]);
  });

  test('a force that is not above zero', () => {
    expect(codes({ widthMm: 15, points: trace(100, 10, () => 0) })).toEqual(['no-force']);
    expect(codes({ widthMm: 15, points: trace(100, 10, (mm) => -2 - 0.1 * Math.sin(mm)) })).toContain('no-force');
  });

  test('points that are spaced unevenly', () => {
    const dense = trace(50, 100, () => 1).slice(0, -1);
    const sparse: Points = Array.from({ length: 51 }, (_, index) => [50 + index, 2]);
    const { flags, results } = run({ widthMm: 15, points: [...dense, ...sparse], discardStartMm: 0 });
    expect(results.mean!.value).toBeLessThan(1.05);
    expect(flags.find(({ code }) => code === 'uneven-steps')!.text).toMatch(/averaged over the travel the force is 1\.50 N/);
  });
});

describe('bad input is refused', () => {
  const good = { widthMm: 15, points: [[0, 1], [1, 2], [2, 2], [3, 2]] };
  test.each([
    ['no width', { points: good.points }, 'widthMm', null],
    ['a negative width', { ...good, widthMm: -15 }, 'widthMm', -15],
    ['a width of zero', { ...good, widthMm: 0 }, 'widthMm', 0],
    ['one point', { ...good, points: [[0, 1]] }, 'points', [[0, 1]]],
    ['no points', { widthMm: 15 }, 'points', null],
    ['a displacement that goes back', { ...good, points: [[0, 1], [2, 1], [1, 1]] }, 'points[2][0]', 1],
    ['a displacement given twice', { ...good, points: [[0, 1], [1, 1], [1, 2]] }, 'points[2][0]', 1],
    ['a force that is no number', { ...good, points: [[0, 1], [1, Number.NaN]] }, 'points[1][1]', Number.NaN],
    ['an infinite force', { ...good, points: [[0, 1], [1, Infinity]] }, 'points[1][1]', Infinity],
    ['a point without force', { ...good, points: [[0, 1], [1]] }, 'points[1]', [1]],
    ['text as force', { ...good, points: [[0, 1], [1, '2']] }, 'points[1][1]', '2'],
    ['a plateau that ends before it begins', { ...good, fromMm: 2, toMm: 1 }, 'toMm', 1],
    ['a plateau beyond the trace', { ...good, fromMm: 8, toMm: 9 }, 'toMm', 9],
    ['a plateau of one point', { ...good, fromMm: 0.5, toMm: 1.5 }, 'toMm', 1.5],
    ['everything discarded', { ...good, discardStartMm: 2, discardEndMm: 2 }, 'discardStartMm', 2],
    ['a negative discard', { ...good, discardStartMm: -1 }, 'discardStartMm', -1],
    ['both ways to set the plateau', { ...good, discardStartMm: 1, fromMm: 1 }, 'fromMm', 1],
    ['a speed of zero', { ...good, speedMmPerMin: 0 }, 'speedMmPerMin', 0],
    ['a unit that is not known', { ...good, unit: 'N' }, 'unit', 'N'],
    ['a peak method that is not known', { ...good, peaks: 'F' }, 'peaks', 'F'],
    ['peaks where there are none', { ...good, points: trace(50, 10, () => 2), peaks: 'A' }, 'peaks', 'A'],
    ['a field that is not known', { ...good, width: 15 }, '', { ...good, width: 15 }],
  ])('%s', (_, input, field, value) => {
    const refused = problem(input);
    expect(refused.field).toBe(field);
    expect(refused.value).toEqual(value);
    expect(refused.message).toMatch(/^[A-Z\w].*[.]$/s);
  });
});

describe('any trace', () => {
  const forces = fc.array(fc.double({ min: 0.1, max: 20, noNaN: true }), { minLength: 2, maxLength: 400 });
  const pointsOf = (values: number[]): Points => values.map((force, index) => [index * 0.1, force]);

  test('scaling the forces scales every force and strength', () => {
    fc.assert(
      fc.property(forces, fc.double({ min: 0.01, max: 100, noNaN: true }), (values, factor) => {
        const one = run({ widthMm: 15, points: pointsOf(values), discardStartMm: 0 });
        const other = run({ widthMm: 15, points: pointsOf(values.map((force) => force * factor)), discardStartMm: 0 });
        for (const key of ['mean', 'median', 'minimum', 'maximum', 'strength', 'peelEnergy']) {
          const expected = factor * one.results[key]!.value!;
          expect(Math.abs(other.results[key]!.value! - expected)).toBeLessThanOrEqual(1e-10 * expected);
        }
      }),
    );
  });

  test('the unit changes the strength by its factor and back', () => {
    fc.assert(
      fc.property(forces, fc.constantFrom('N/25 mm', 'N/25.4 mm', 'N/m', 'gf/25 mm', 'gf/in', 'lbf/in'), (values, unit) => {
        const points = pointsOf(values);
        const base = run({ widthMm: 15, points }).results.strength!.value!;
        const asked = run({ widthMm: 15, points, unit }).results.strength!;
        const factors: Record<string, number> = { 'N/25 mm': 25 / 15, 'N/25.4 mm': 25.4 / 15, 'N/m': 1000 / 15, 'gf/25 mm': 169.952702, 'gf/in': 172.671945, 'lbf/in': 0.380676477 };
        expect(asked.unit).toBe(unit);
        expect(Math.abs(asked.value! / factors[unit]! / base - 1)).toBeLessThan(1e-8);
      }),
    );
  });

  test('is proposed a plateau inside the trace, never NaN, even where forces are negative', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -20_000, max: 20_000 }).map((millinewtons) => millinewtons / 1000), { minLength: 2, maxLength: 300 }), (values) => {
        const { results } = run({ widthMm: 15, points: pointsOf(values) });
        expect(results.plateauFrom!.value).toBeGreaterThanOrEqual(0);
        expect(results.plateauTo!.value).toBeLessThanOrEqual(values.length * 0.1);
        expect(results.mean!.n).toBeGreaterThanOrEqual(2);
      }),
    );
  });
});

describe('a long trace', () => {
  const points = trace(100, 2000, (mm) => peel(mm) + 0.01 * Math.sin(mm * 977));

  test('of 200 001 points is evaluated whole and drawn with at most 2000 points that keep its peak', () => {
    const { figures, results } = run({ widthMm: 15, points });
    expect(results.mean!.n).toBeGreaterThan(150_000);
    const drawn = figures[0]!.series[0]!.points;
    expect(drawn.length).toBeLessThanOrEqual(2000);
    expect(Math.max(...drawn.map(({ y }) => y!))).toBe(points.reduce((most, [, force]) => Math.max(most, force), 0));
    expect(figures[0]!.lines!.map(({ name }) => name)).toEqual(['plateau from', 'plateau to', 'mean']);
  });
});
