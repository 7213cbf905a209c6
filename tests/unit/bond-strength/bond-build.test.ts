import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bondBuildCalculation } from '../../../shared-lib/bond-strength/bond-build.calculation.ts';
import { fitCensoredCurve } from '../../../shared-lib/bond-strength/censored-curve.ts';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { fitCensoredNormal } from '../../../shared-lib/statistics/censored-normal.ts';

const run = (input: unknown) => runCalculation(bondBuildCalculation, input);
const HOURS = [1, 2, 4, 6, 9, 12, 18, 24, 36, 48, 72, 96];
const curve = (initial: number, plateau: number, rate: number, lag = 0) => (hours: number) =>
  initial + (plateau - initial) * (1 - Math.exp(-rate * Math.max(0, hours - lag)));
const readings = (strength: (hours: number) => number, noise: (index: number) => number = () => 0, hours = HOURS) =>
  hours.map((at, index) => ({ hours: at, strengthNPer15mm: Math.max(0, strength(at) + noise(index)) }));
/** A fixed scatter of about 0.05 N/15 mm without trend. */
const SCATTER = [0.04, -0.06, 0.05, -0.03, 0.06, -0.05, 0.02, -0.04, 0.07, -0.05, 0.03, -0.04];
const scatter = (index: number) => SCATTER[index % SCATTER.length]!;

describe('an exact curve', () => {
  test('without lag gives its parameters back', () => {
    const { results, table } = run({ readings: readings(curve(0.4, 3, 0.08)), requiredNPer15mm: 2 });
    expect(results.initial!.value).toBeCloseTo(0.4, 5);
    expect(results.plateau!.value).toBeCloseTo(3, 5);
    expect(results.rate!.value).toBeCloseTo(0.08, 5);
    expect(results.lag).toBeUndefined();
    // −ln(1 − (2 − 0.4)/(3 − 0.4))/0.08 = 11.944 h
    expect(results.hoursUntilRequired!.value).toBeCloseTo(-Math.log(1 - 1.6 / 2.6) / 0.08, 4);
    expect(table.map((row) => [row.model, row.chosen])).toEqual([['first-order', true], ['first-order with lag', false]]);
  });

  test('with a lag is told from one without', () => {
    const { results, table } = run({ readings: readings(curve(0.5, 3, 0.05, 7)), requiredNPer15mm: 2 });
    expect(results.lag!.value).toBeCloseTo(7, 3);
    expect(results.rate!.value).toBeCloseTo(0.05, 4);
    // 7 − ln(1 − 1.5/2.5)/0.05 = 25.326 h
    expect(results.hoursUntilRequired!.value).toBeCloseTo(25.326, 2);
    expect(table[1]).toMatchObject({ model: 'first-order with lag', chosen: true });
    expect(table[1]!.aicc as number).toBeLessThan(table[0]!.aicc as number);
  });
});

describe('readings with scatter', () => {
  const result = run({ readings: readings(curve(0.4, 3, 0.08), scatter), requiredNPer15mm: 2 });

  test('give hours with an interval that holds the true value', () => {
    const { value, low, high, level } = result.results.hoursUntilRequired!;
    expect(level).toBe(0.95);
    expect(low!).toBeLessThan(11.944);
    expect(high!).toBeGreaterThan(11.944);
    expect(high! - low!).toBeLessThan(3);
    expect(value!).toBeGreaterThan(low!);
  });

  test('draw the curve with its band, the requirement and when it is reached', () => {
    const figure = result.figures[0]!;
    expect(figure.bands![0]!.points.length).toBe(101);
    expect(figure.lines!.map(({ name }) => name)).toEqual(['required', 'reached']);
  });

  test('have the AICc of least squares: n·ln(RSS/n) + 2k + 2k(k+1)/(n−k−1)', () => {
    const row = result.table[0]!;
    const rss = (row.residualSd as number) ** 2 * (12 - 3);
    expect(row.aicc).toBeCloseTo(12 * Math.log(rss / 12) + 8 + (2 * 4 * 5) / (12 - 4 - 1), 8);
  });
});

describe('torn specimens', () => {
  const torn = readings(curve(0.4, 3, 0.08), scatter).map((reading) => (reading.hours >= 36 ? { ...reading, strengthNPer15mm: 2.4, mode: 'film-tear' } : reading));

  test('are lower bounds and do not pull the plateau down to the film’s strength', () => {
    const asBounds = run({ readings: torn });
    const atFaceValue = run({ readings: torn.map(({ hours, strengthNPer15mm }) => ({ hours, strengthNPer15mm })) });
    expect(atFaceValue.results.plateau!.value!).toBeLessThan(2.6);
    expect(asBounds.results.plateau!.value!).toBeGreaterThan(2.7);
    expect(asBounds.notes[0]).toMatch(/4 readings in which the film gave way count as lower bounds/);
    expect(asBounds.figures[0]!.series[0]!.points.filter(({ open }) => open === 'up')).toHaveLength(4);
  });

  test('far below the curve change nothing', () => {
    const base = readings(curve(0.4, 3, 0.08), scatter);
    const one = run({ readings: base }).results;
    const other = run({ readings: [...base, { hours: 90, strengthNPer15mm: 1, mode: 'film-tear' }] }).results;
    expect(other.plateau!.value).toBeCloseTo(one.plateau!.value!, 4);
  });

  test('a level line through lower bounds agrees with the censored normal', () => {
    const values = [2.1, 2.4, 1.9, 2.6, 2.2, 2.5];
    const bounds = [2.4, 2.0];
    const straight = fitCensoredCurve(
      [...values.map((y) => ({ x: 0, y, lowerBound: false })), ...bounds.map((y) => ({ x: 0, y, lowerBound: true }))],
      { model: (_, [level]) => level!, start: [[2]], lower: [-Infinity], upper: [Infinity] },
    );
    const normal = fitCensoredNormal([...values.map((y) => ({ low: y, high: y })), ...bounds.map((y) => ({ low: y, high: null }))]);
    expect(straight.fit.parameters[0]).toBeCloseTo(normal.mean!, 6);
    expect(straight.sigma).toBeCloseTo(normal.standardDeviation!, 6);
  });
});

describe('the requirement', () => {
  const base = readings(curve(0.4, 3, 0.08), scatter);
  test('above the plateau is not reached', () => {
    const { results, flags } = run({ readings: base, requiredNPer15mm: 4 });
    expect(results.hoursUntilRequired).toMatchObject({ value: 96, low: 96, high: null, bound: 'at-least' });
    expect(flags).toMatchObject([{ code: 'not-reached' }]);
  });
  test('below the start is met from lamination on', () => {
    expect(run({ readings: base, requiredNPer15mm: 0.1 }).results.hoursUntilRequired).toMatchObject({ value: 0, bound: 'at-most' });
  });
  test('left out leaves the hours empty, with a note', () => {
    const { results, notes } = run({ readings: base });
    expect(results.hoursUntilRequired!.value).toBeNull();
    expect(notes.join(' ')).toMatch(/No requirement was given/);
  });
  test('beyond the last reading is flagged', () => {
    const early = readings(curve(0.4, 3, 0.03), scatter, [1, 2, 4, 6, 9, 12, 18, 24]);
    expect(run({ readings: early, requiredNPer15mm: 2 }).flags.map(({ code }) => code)).toContain('extrapolated');
  });
});

describe('edges', () => {
  test('four readings fit the simpler model only', () => {
    const { table, results } = run({ readings: readings(curve(0.4, 3, 0.08), scatter, [2, 8, 24, 72]) });
    expect(table).toHaveLength(1);
    expect(results.plateau!.level).toBe(0.95);
  });
  test('a bond that has not changed has no NaN in it', () => {
    const { results } = run({ readings: readings(() => 2), requiredNPer15mm: 3 });
    expect(results.hoursUntilRequired!.bound).toBe('at-least');
  });
});

describe('bad input is refused', () => {
  const good = readings(curve(0.4, 3, 0.08));
  test.each([
    ['three readings', { readings: good.slice(0, 3) }, 'readings'],
    ['two different times', { readings: [1, 1, 2, 2].map((hours) => ({ hours, strengthNPer15mm: 1 })) }, 'readings'],
    ['all torn', { readings: good.map((reading) => ({ ...reading, mode: 'film-tear' })) }, 'readings'],
    ['negative hours', { readings: [{ hours: -1, strengthNPer15mm: 1 }, ...good] }, 'readings[0].hours'],
    ['no strength', { readings: [{ hours: 1 }, ...good] }, 'readings[0].strengthNPer15mm'],
    ['a force without width', { readings: [...good, { hours: 1, forceN: 1 }] }, 'readings[12].widthMm'],
    ['NaN', { readings: [...good, { hours: Number.NaN, strengthNPer15mm: 1 }] }, 'readings[12].hours'],
    ['only zeros', { readings: readings(() => 0) }, 'readings'],
    ['an unknown mode', { readings: [...good, { hours: 1, strengthNPer15mm: 1, mode: 'x' }] }, 'readings[12].mode'],
    ['a requirement of zero', { readings: good, requiredNPer15mm: 0 }, 'requiredNPer15mm'],
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

describe('any build-up', () => {
  test('scales with its forces, whatever the order of the readings', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.2, noNaN: true }), fc.double({ min: 1, max: 6, noNaN: true }), fc.constantFrom(0.5, 3), (rate, plateau, factor) => {
        const base = readings(curve(0.2, plateau, rate), scatter);
        const one = run({ readings: base, requiredNPer15mm: 0.7 * plateau });
        const other = run({ readings: base.map((reading) => ({ ...reading, strengthNPer15mm: reading.strengthNPer15mm * factor })).reverse(), requiredNPer15mm: 0.7 * plateau * factor });
        expect(other.results.plateau!.value! / factor).toBeCloseTo(one.results.plateau!.value!, 4);
        expect(other.results.hoursUntilRequired!.value!).toBeCloseTo(one.results.hoursUntilRequired!.value!, 2);
      }),
      { numRuns: 15 },
    );
  });
});
