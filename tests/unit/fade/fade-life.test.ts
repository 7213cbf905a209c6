import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { fadeLifeCalculation } from '../../../shared-lib/fade/fade-life.calculation.ts';

const run = (input: unknown) => runCalculation(fadeLifeCalculation, input);
const codes = (input: unknown) => run(input).flags.map(({ code }) => code);

type Point = [exposure: number, retained: number];
const retained = (points: Point[], series?: string) => points.map(([exposure, value]) => ({ exposure, retained: value, ...(series ? { series } : {}) }));
const deltaE = (points: Point[]) => points.map(([exposure, value]) => ({ exposure, deltaE: value }));

/** First order with a little scatter, read past the limit. */
const good: Point[] = [[0, 1], [40, 0.93], [80, 0.845], [120, 0.79], [160, 0.72], [200, 0.675], [240, 0.615]];
const inPercent = good.map(([exposure, value]): Point => [exposure, value * 100]);

describe('fade-life', () => {
  it('chooses a model by AICc, shows all, and gives the exposure to the limit with an interval', () => {
    const { results, table, figures, flags } = run({ readings: retained(good) });
    expect(table.map(({ model }) => model)).toEqual(['zero-order', 'first-order', 'stretched-exponential']);
    expect(table.filter(({ chosen }) => chosen)).toHaveLength(1);
    expect(Math.min(...table.map(({ deltaAicc }) => deltaAicc as number))).toBe(0);
    const life = results.exposureToLimit!;
    expect(life).toMatchObject({ unit: 'h', n: 6, level: 0.95, bound: 'exact' });
    expect(life.low!).toBeLessThan(life.value!);
    expect(life.high!).toBeGreaterThan(life.value!);
    expect(life.value!).toBeGreaterThan(160);
    expect(life.value!).toBeLessThan(200);
    expect(flags).toEqual([]);
    expect(figures[0]!.bands![0]!.points.length).toBeGreaterThan(10);
    expect(figures[0]!.lines!.map(({ role }) => role)).toEqual(['limit', 'mark']);
    expect(figures[0]!.finding).toContain('70 %');
  });

  it('reads fractions and percent alike', () => {
    const asFraction = run({ readings: retained(good) });
    const asPercent = run({ readings: retained(inPercent) });
    expect(asPercent.results.exposureToLimit!.value).toBeCloseTo(asFraction.results.exposureToLimit!.value!, 6);
    expect(asFraction.notes[0]).toContain('fractions');
    expect(asPercent.notes[0]).toContain('percent');
  });

  it('has a settable endpoint', () => {
    const life = (retentionPct: number) => run({ readings: retained(good), endpoint: { retentionPct } }).results.exposureToLimit!.value!;
    expect(life(90)).toBeLessThan(life(80));
    expect(life(80)).toBeLessThan(life(65));
  });

  it('without an endpoint on ΔE gives the curve and says what is missing', () => {
    const { results, notes } = run({ readings: deltaE([[1, 2], [2, 3.5], [4, 5.6], [8, 7.4], [16, 8.1]]) });
    expect(results.exposureToLimit).toBeUndefined();
    expect(results.plateau!.value).toBeGreaterThan(7);
    expect(notes.join(' ')).toContain('endpoint.deltaE');
  });
});

describe('fade-life at the edges of what the readings say', () => {
  it('flags extrapolation with its factor', () => {
    const { results, flags } = run({ readings: retained(good.slice(0, 5)) });
    expect(results.exposureToLimit!.value!).toBeGreaterThan(160);
    expect(flags.map(({ code }) => code)).toContain('extrapolated');
  });

  it('already past at the first reading: at most its exposure', () => {
    const { results, flags } = run({ readings: retained([[0, 1], [50, 0.6], [100, 0.41], [150, 0.3], [200, 0.2]]) });
    expect(results.exposureToLimit).toMatchObject({ value: 50, low: null, high: null, bound: 'at-most' });
    expect(flags.map(({ code }) => code)).toEqual(['past-at-first-reading']);
  });

  it('never reached: at least the last exposure', () => {
    const { results, flags } = run({ readings: retained([[0, 1], [50, 1.001], [100, 1.003], [150, 1.004], [200, 1.006]]) });
    expect(results.exposureToLimit).toMatchObject({ value: 200, low: null, high: null, bound: 'at-least' });
    expect(flags.map(({ code }) => code)).toEqual(['never-reached']);
  });

  it('a plateau short of the limit: at least the last exposure', () => {
    const points: Point[] = [[5, 1.31], [10, 2.02], [20, 2.72], [40, 2.95], [80, 3.01], [160, 2.98]];
    const { results } = run({ readings: deltaE(points), endpoint: { deltaE: 5 } });
    expect(results.exposureToLimit).toMatchObject({ value: 160, bound: 'at-least' });
  });

  it('fading that scatter hides: a lower end, no upper end', () => {
    const { results, flags } = run({ readings: retained([[0, 1], [20, 0.99], [40, 1.01], [60, 0.995], [80, 1.0], [100, 0.99]]) });
    expect(results.exposureToLimit!.high).toBeNull();
    expect(results.exposureToLimit!.low!).toBeGreaterThan(100);
    expect(flags.map(({ code }) => code)).toContain('open-interval');
  });

  it('readings without scatter: a value, no interval, and the reason', () => {
    const { results, notes } = run({ readings: retained([[0, 1], [10, 0.95], [20, 0.9], [30, 0.85]]) });
    expect(results.exposureToLimit).toMatchObject({ low: null, high: null, level: null });
    expect(results.exposureToLimit!.value).toBeCloseTo(60, 8);
    expect(notes.join(' ')).toContain('without scatter');
  });

  it('too few readings to choose: first order, flagged', () => {
    const { flags, table } = run({ readings: retained([[0, 1], [100, 0.83], [200, 0.7]]) });
    expect(table.find(({ chosen }) => chosen)!.model).toBe('first-order');
    expect(flags.map(({ code }) => code)).toContain('too-few-to-choose');
  });

  it('models that fit as well and disagree are flagged', () => {
    expect(codes({ readings: retained([[0, 1], [10, 0.98], [20, 0.965], [30, 0.94], [40, 0.925]]), endpoint: { retentionPct: 40 } })).toContain('models-disagree');
  });

  it('a start that is not unfaded is flagged and kept', () => {
    const points: Point[] = [[0, 0.95], ...good.slice(1)];
    const { flags, results } = run({ readings: retained(points) });
    expect(flags.map(({ code }) => code)).toContain('start-not-unfaded');
    expect(results.exposureToLimit!.n).toBe(7);
  });
});

describe('fade-life with replicate patches', () => {
  const patch = (name: string, factor: number) => retained(good.map(([exposure, value]): Point => [exposure * factor, value]), name);

  it('takes the geometric mean of the patches with the t interval of the logarithms', () => {
    const single = run({ readings: retained(good) }).results.exposureToLimit!.value!;
    const { results, table, figures } = run({ readings: [...patch('A', 1), ...patch('B', 1.1), ...patch('C', 1.21)] });
    const life = results.exposureToLimit!;
    expect(life.n).toBe(3);
    expect(life.value!).toBeCloseTo(single * 1.1, 6);
    // s of the logarithms is ln 1.1; t(0.975; 2) = 4.302653.
    expect(life.high! / life.value!).toBeCloseTo(Math.exp((4.30265273 * Math.log(1.1)) / Math.sqrt(3)), 6);
    expect(table).toHaveLength(9);
    expect(new Set(table.filter(({ chosen }) => chosen).map(({ model }) => model)).size).toBe(1);
    expect(figures[0]!.bands).toEqual([]);
  });

  it('does not depend on how the patches are interleaved', () => {
    const one = run({ readings: [...patch('A', 1), ...patch('B', 1.2)] }).results.exposureToLimit!;
    const interleaved = patch('A', 1).flatMap((reading, i) => [patch('B', 1.2)[i]!, reading]);
    const other = run({ readings: interleaved }).results.exposureToLimit!;
    expect(other.value!).toBeCloseTo(one.value!, 8);
    expect(other.high!).toBeCloseTo(one.high!, 6);
  });

  it('one patch that never fades makes the mean a lower bound', () => {
    const still = retained(good.map(([exposure], i): Point => [exposure, 1 + 0.002 * i]), 'B');
    const { results } = run({ readings: [...patch('A', 1), ...still] });
    expect(results.exposureToLimit!.bound).toBe('at-least');
    expect(results.exposureToLimit!.low).toBeNull();
  });

  it('one that never fades and one past at once: nothing can be said', () => {
    const still = retained(good.map(([exposure], i): Point => [exposure, 1 + 0.002 * i]), 'A');
    const gone = retained([[0, 1], [40, 0.5], [80, 0.26], [120, 0.12], [160, 0.06], [200, 0.03]], 'B');
    const { results, notes } = run({ readings: [...still, ...gone] });
    expect(results.exposureToLimit!.value).toBeNull();
    expect(notes.join(' ')).toContain('cannot be given');
  });
});

describe('fade-life: dose and service time', () => {
  it('gives an estimate of years and warns against it', () => {
    const { results, cautions } = run({ readings: retained(good), irradianceWPerM2: 42, yearlyDoseMJPerM2: 10 });
    const hours = results.exposureToLimit!.value!;
    expect(results.serviceTime!.unit).toBe('years');
    expect(results.serviceTime!.value).toBeCloseTo((hours * 42 * 3.6) / 1000 / 10, 8);
    expect(results.serviceTime!.low! / results.serviceTime!.value!).toBeCloseTo(results.exposureToLimit!.low! / hours, 10);
    expect(cautions.join(' ')).toMatch(/estimate.*never equals/s);
  });

  it('keeps the bound', () => {
    const readings = retained([[0, 1], [50, 0.6], [100, 0.41], [150, 0.3]]);
    expect(run({ readings, exposureUnit: 'MJ/m²', yearlyDoseMJPerM2: 10 }).results.serviceTime).toMatchObject({ value: 5, bound: 'at-most' });
  });

  it('always says that the laboratory is not life', () => {
    expect(run({ readings: retained(good) }).cautions.join(' ')).toContain('never equals');
  });
});

describe('fade-life refuses', () => {
  it.each([
    ['an exposure that falls', { readings: retained([[0, 1], [100, 0.9], [50, 0.8]]) }, 'readings[2].exposure'],
    ['one reading', { readings: retained([[10, 0.9]]) }, 'readings'],
    ['one reading after the start', { readings: retained([[0, 1], [10, 0.9]]) }, 'readings'],
    ['a series with one reading', { readings: [...retained(good, 'A'), ...retained([[10, 0.9]], 'B')] }, 'readings'],
    ['a negative exposure', { readings: retained([[-1, 1], [10, 0.9], [20, 0.8]]) }, 'readings[0].exposure'],
    ['NaN', { readings: retained([[0, 1], [10, Number.NaN], [20, 0.8]]) }, 'readings[1].retained'],
    ['retained and deltaE in one reading', { readings: [{ exposure: 1, retained: 1, deltaE: 1 }, { exposure: 2, retained: 1 }] }, 'readings[0].deltaE'],
    ['retained and deltaE mixed', { readings: [{ exposure: 1, retained: 1 }, { exposure: 2, deltaE: 1 }] }, 'readings[1].retained'],
    ['a reading without a value', { readings: [{ exposure: 1 }, { exposure: 2 }] }, 'readings[0].retained'],
    ['fractions among percent', { readings: retained([[0, 100], [10, 0.9], [20, 80]]) }, 'readings[1].retained'],
    ['percent stated as fractions', { readings: retained([[0, 100], [10, 90], [20, 80]]), retainedAs: 'fraction' }, 'readings[0].retained'],
    ['fractions stated as percent', { readings: retained(good), retainedAs: 'percent' }, 'retainedAs'],
    ['an endpoint of 0 %', { readings: retained(good), endpoint: { retentionPct: 0 } }, 'endpoint.retentionPct'],
    ['an endpoint of ΔE 0', { readings: retained(good), endpoint: { deltaE: 0 } }, 'endpoint.deltaE'],
    ['an unknown unit', { readings: retained(good), exposureUnit: 'klx·h' }, 'exposureUnit'],
    ['irradiance 0', { readings: retained(good), irradianceWPerM2: 0 }, 'irradianceWPerM2'],
    ['service time from hours without irradiance', { readings: retained(good), yearlyDoseMJPerM2: 10 }, 'irradianceWPerM2'],
    ['a dose of 0', { readings: retained(good), irradianceWPerM2: 42, yearlyDoseMJPerM2: 0 }, 'yearlyDoseMJPerM2'],
    ['a level of 1', { readings: retained(good), level: 1 }, 'level'],
    ['an unknown field', { readings: retained(good), limit: 70 }, ''],
    ['a negative ΔE', { readings: deltaE([[1, -1], [2, 2], [3, 3]]) }, 'readings[0].deltaE'],
  ])('%s', (_what, input, field) => {
    expect(() => run(input)).toThrow(InputError);
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

describe('fade-life properties', () => {
  const noisy = fc
    .tuple(fc.double({ min: 0.001, max: 0.01, noNaN: true }), fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), { minLength: 5, maxLength: 9 }))
    .map(([rate, scatter]) => scatter.map((error, i): Point => [(i + 1) * 40, Math.exp(-rate * (i + 1) * 40) + error]));

  it('stretches with the exposure: hours in, kJ/m² in, the same life', () => {
    fc.assert(
      fc.property(noisy, fc.double({ min: 1, max: 100, noNaN: true }), (points, irradiance) => {
        const inHours = run({ readings: retained(points), irradianceWPerM2: irradiance });
        const factor = irradiance * 3.6;
        const inDose = run({ readings: retained(points.map(([h, r]): Point => [h * factor, r])), exposureUnit: 'kJ/m²', irradianceWPerM2: irradiance });
        const hours = inHours.results.exposureToLimit!;
        const back = inDose.results.hoursToLimit!;
        expect(back.bound).toBe(hours.bound);
        expect(back.value! / hours.value!).toBeCloseTo(1, 5);
        if (hours.high !== null) expect(back.high! / hours.high).toBeCloseTo(1, 3);
      }),
      { numRuns: 40 },
    );
  });

  it('the interval holds the value, and gives no number that is not finite', () => {
    fc.assert(
      fc.property(noisy, fc.integer({ min: 20, max: 95 }), (points, retentionPct) => {
        const { value, low, high, bound } = run({ readings: retained(points), endpoint: { retentionPct } }).results.exposureToLimit!;
        if (bound !== 'exact') return;
        expect(value!).toBeGreaterThan(0);
        if (low !== null) expect(low).toBeLessThanOrEqual(value!);
        if (high !== null) expect(high).toBeGreaterThanOrEqual(value!);
      }),
      { numRuns: 60 },
    );
  });
});
