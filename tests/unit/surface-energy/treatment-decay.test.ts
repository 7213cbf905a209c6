import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { treatmentDecayCalculation } from '../../../shared-lib/surface-energy/treatment-decay.calculation.ts';
import { refusal } from './refusal.ts';

const run = (readings: unknown, requiredMNm: unknown = 40) => runCalculation(treatmentDecayCalculation, { readings, requiredMNm });
const days = [0, 1, 2, 4, 7, 14, 21, 30, 45, 60];
const exponential = (day: number) => 38 + 10 * Math.exp(-0.08 * day);
const logarithm = (day: number) => 48 - 4 * Math.log10(1 + day);
const exact = (curve: (day: number) => number, at = days) => at.map((day) => ({ days: day, wettingMNm: curve(day) }));
const bracketed = (curve: (day: number) => number, step: number, at = days) =>
  at.map((day) => {
    const wetsMNm = Math.floor(curve(day) / step) * step;
    return { days: day, wetsMNm, retractsMNm: wetsMNm + step };
  });

describe('the model behind the readings', () => {
  it('comes back with its parameters: exponential to a floor', () => {
    const { results, table } = run(exact(exponential));
    expect(table.find((row) => row.chosen === 'yes')!.model).toBe('exponential to a floor');
    expect(results.initial!.value).toBeCloseTo(48, 4);
    expect(results.floor!.value).toBeCloseTo(38, 4);
    expect(results.rate!.value).toBeCloseTo(0.08, 6);
    expect(results.daysUntilRequired!.value).toBeCloseTo(-Math.log(2 / 10) / 0.08, 3);
  });

  it('comes back with its parameters: log-time, which has no floor', () => {
    const { results, table } = run(exact(logarithm), 42);
    expect(table.find((row) => row.chosen === 'yes')!.model).toBe('log-time');
    expect(results.initial!.value).toBeCloseTo(48, 6);
    expect(results.rate!.value).toBeCloseTo(4, 6);
    expect(results.floor!.value).toBeNull();
    expect(results.daysUntilRequired!.value).toBeCloseTo(10 ** 1.5 - 1, 4);
  });

  it('is shown beside the other one, both with their AICc', () => {
    const { table, figures } = run(exact(logarithm));
    expect(table.map((row) => typeof row.aicc)).toEqual(['number', 'number']);
    expect(figures[0]!.series.map((series) => series.role)).toEqual(['reading', 'fit', 'reference']);
  });
});

describe('brackets as censored data', () => {
  it('hold the true day in their interval, wider than that of exact readings', () => {
    const truth = 10 ** 1.5 - 1;
    const fine = run(exact(logarithm), 42).results.daysUntilRequired!;
    const coarse = run(bracketed(logarithm, 2), 42).results.daysUntilRequired!;
    expect(coarse.low!).toBeLessThan(truth);
    expect(coarse.high!).toBeGreaterThan(truth);
    expect(coarse.high! - coarse.low!).toBeGreaterThan(fine.high! - fine.low!);
  });

  it('may be open on one side', () => {
    const readings = [...bracketed(logarithm, 2), { days: 90, retractsMNm: 42 }, { days: 0, wetsMNm: 46 }];
    const { results, figures } = run(readings, 42);
    expect(results.daysUntilRequired!.value).toBeGreaterThan(10);
    expect(figures[0]!.series[0]!.points.filter((point) => point.open).map((point) => point.open)).toEqual(['down', 'up']);
  });
});

describe('days until the requirement', () => {
  it('hold their interval, and the test is due on the last whole day before its lower end', () => {
    const { results } = run(bracketed(exponential, 2));
    const { value, low, high, bound, level } = results.daysUntilRequired!;
    expect(bound).toBe('exact');
    expect(level).toBe(0.95);
    expect(low!).toBeLessThanOrEqual(value!);
    expect(high!).toBeGreaterThanOrEqual(value!);
    expect(Number.isInteger(low)).toBe(false);
    expect(results.testAgainBy!.value).toBe(Math.floor(low!));
  });

  it('agree with the band of the figure: the band holds the requirement on both end days', () => {
    const { results, figures } = run(exact(logarithm).map((reading, index) => ({ ...reading, wettingMNm: reading.wettingMNm + (index % 2 ? 0.6 : -0.6) })), 43);
    const { low, high } = results.daysUntilRequired!;
    const band = figures[0]!.bands![0]!.points;
    const inside = band.filter((point) => point.low <= 43 && point.high >= 43).map((point) => point.x);
    expect(Math.min(...inside)).toBeGreaterThanOrEqual(low! - 1e-3);
    expect(Math.max(...inside)).toBeLessThanOrEqual(high! + 1e-3);
  });

  it('are a lower bound where the curve levels off above the requirement', () => {
    const { results, flags } = run(exact(exponential), 36);
    expect(results.daysUntilRequired).toMatchObject({ bound: 'at-least', high: null });
    expect(flags.map((flag) => flag.code)).toContain('extrapolated');
  });

  it('are an upper bound where the film was below from the start', () => {
    const { results } = run(exact(exponential), 52);
    expect(results.daysUntilRequired).toMatchObject({ bound: 'at-most', low: null, value: 0 });
    expect(results.testAgainBy!.value).toBe(0);
  });

  it('are flagged beyond the last reading and where the models disagree', () => {
    const codes = run(exact(logarithm), 38).flags.map((flag) => flag.code);
    expect(codes).toEqual(expect.arrayContaining(['extrapolated', 'models-disagree']));
  });
});

describe('flags', () => {
  it('tell that nothing falls', () => {
    expect(run(exact(() => 44)).flags.map((flag) => flag.code)).toContain('no-decay');
  });

  it('tell of a reading far from the curve, which still counts', () => {
    const readings = exact(logarithm, Array.from({ length: 30 }, (_, day) => day));
    readings[12]!.wettingMNm += 4;
    const { flags, results } = run(readings, 42);
    expect(flags.find((flag) => flag.code === 'far-from-curve')).toMatchObject({ where: 'day 12' });
    expect(results.daysUntilRequired!.n).toBe(30);
  });

  it('tell that the floor is not in sight', () => {
    const { results, flags, table } = run(exact((day) => 50 - 0.2 * day));
    expect(table.find((row) => row.chosen === 'yes')!.model).toBe('exponential to a floor');
    expect(results.floor!.value).toBeNull();
    expect(flags.map((flag) => flag.code)).toContain('floor-not-seen');
  });
});

describe('few readings', () => {
  it('take the log-time model where AICc cannot compare, and say so', () => {
    const { table, notes } = run(exact(exponential, [0, 2, 5, 10, 20]));
    expect(table.find((row) => row.chosen === 'yes')!.model).toBe('log-time');
    expect(notes.join(' ')).toContain('Too few readings to compare');
  });

  it('give wide, honest intervals with three readings', () => {
    const { results } = run([{ days: 0, wettingMNm: 44 }, { days: 5, wettingMNm: 42 }, { days: 10, wettingMNm: 41 }]);
    expect(results.daysUntilRequired!.high).toBeNull();
    expect(results.daysUntilRequired!.low!).toBeLessThan(10);
  });
});

describe('order and units', () => {
  it('do not matter: unsorted days give the same', () => {
    const readings = bracketed(exponential, 2);
    const inOrder = run(readings).results;
    fc.assert(
      fc.property(fc.shuffledSubarray(readings, { minLength: readings.length }), (shuffled) => {
        const { results } = run(shuffled);
        for (const key of ['initial', 'floor', 'daysUntilRequired']) expect(results[key]!.value).toBeCloseTo(inOrder[key]!.value!, 3);
      }),
      { numRuns: 5 },
    );
  });
});

describe('refusals name the field', () => {
  const good = exact(exponential);
  it.each([
    [[], 40, 'readings'],
    [good.slice(0, 2), 40, 'readings'],
    [good, undefined, 'requiredMNm'],
    [good, NaN, 'requiredMNm'],
    [[...good, { days: -1, wettingMNm: 40 }], 40, 'readings[10].days'],
    [[...good, { days: 'seven', wettingMNm: 40 }], 40, 'readings[10].days'],
    [[...good, { days: 7 }], 40, 'readings[10].wetsMNm'],
    [[...good, { days: 7, wettingMNm: 40, wetsMNm: 38 }], 40, 'readings[10].wettingMNm'],
    [[...good, { days: 7, wetsMNm: 40, retractsMNm: 38 }], 40, 'readings[10].retractsMNm'],
    [good.map(({ days: day }) => ({ days: day, wetsMNm: 38 })), 40, 'readings'],
    [good.map(({ days: day }) => ({ days: day, retractsMNm: 38 })), 40, 'readings'],
    [good.map(({ wettingMNm }) => ({ days: 3, wettingMNm })), 40, 'readings'],
  ])('%j, %s', (readings, requiredMNm, field) => {
    expect(refusal(() => runCalculation(treatmentDecayCalculation, { readings, requiredMNm })).field).toBe(field);
  });
});
