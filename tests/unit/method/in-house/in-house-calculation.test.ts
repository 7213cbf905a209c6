import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../../shared-lib/calculation/calculation.ts';
import { inHouseCalculation } from '../../../../shared-lib/method/in-house/in-house.calculation.ts';
import { medianRank } from '../../../../shared-lib/statistics/median-interval.ts';

const read = (values: (number | null)[], more: object = {}) => ({ key: 'x', label: 'X', values, ...more });
const take = (statistic: string, more: object = {}) => ({ key: 'result', title: 'Result', reading: 'x', statistic, ...more });
const run = (readings: object[], properties: object[], more: object = {}) => runCalculation(inHouseCalculation, { readings, properties, ...more });
const result = (readings: object[], property: object) => run(readings, [property]).results.result!;

/** Extra sleep, group 1, of Student's own data (Biometrika 6 (1908) 1), as R's data set `sleep` has it. */
const sleep = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];

describe('a mean', () => {
  it('has the t interval that R prints for t.test(extra[group == 1])', () => {
    const { value, low, high, n } = result([read(sleep)], take('mean'));
    expect(value).toBeCloseTo(0.75, 12);
    // R 4, t.test: 95 percent confidence interval −0.5297804 2.0297804 (from memory; 0.75 ± 2.262157·1.78901/√10).
    expect(low).toBeCloseTo(-0.5297804, 6);
    expect(high).toBeCloseTo(2.0297804, 6);
    expect(n).toBe(10);
  });

  it('of one reading has no interval and says so', () => {
    const { results, notes } = run([read([3])], [take('mean')]);
    expect(results.result).toMatchObject({ value: 3, low: null, high: null, level: null, n: 1 });
    expect(notes.join(' ')).toMatch(/one reading shows no spread/);
  });

  it('flags a doubtful reading and keeps it', () => {
    // Grubbs' G of 12 in 5, 5.1, 4.9, 5, 12: mean 6.4, s 3.1314, G = 1.788 > 1.715 for n = 5 (ISO 5725-2 table, two-sided 5 %).
    const { flags, results } = run([read([5, 5.1, 4.9, 5, 12])], [take('mean')]);
    expect(flags).toEqual([expect.objectContaining({ code: 'doubtful-reading', where: 'readings[0].values[4]' })]);
    expect(flags[0]!.text).toMatch(/12 lies 1\.79 .*1\.7[12]\).*kept/);
    expect(results.result!.n).toBe(5);
  });

  it('takes readings that are ‘or more’ as such, and is a bound where all of them are', () => {
    const some = result([read([20, 30, 40, 50, 50], { kind: 'count', orMore: [false, false, false, true, true] })], take('mean'));
    expect(some.value).toBeGreaterThan(38); // the plain mean would be too low
    expect(some.bound).toBe('exact');
    const all = result([read([50, 50, 50], { kind: 'count', orMore: [true, true, true] })], take('mean'));
    expect(all).toMatchObject({ value: 50, bound: 'at-least', high: null });
  });
});

describe('a median', () => {
  it.each([
    // Ranks and coverage by the binomial distribution: n = 10, 1 − 2·(1 + 10)/2¹⁰; n = 6, 1 − 2/2⁶; as tabulated in Conover (1999), A3.
    [6, 1, 0.96875],
    [10, 2, 1 - 22 / 1024],
    [15, 4, 1 - (2 * (1 + 15 + 105 + 455)) / 2 ** 15],
    [20, 6, 0.9586],
  ])('of %i readings is bracketed from rank %i', (n, rank, coverage) => {
    expect(medianRank(n)!.rank).toBe(rank);
    expect(medianRank(n)!.coverage).toBeCloseTo(coverage, 4);
  });

  it('has no bracket below six readings at 95 %', () => {
    expect(medianRank(5)).toBeNull();
    expect(medianRank(5, 0.9)).toMatchObject({ rank: 1 });
    expect(result([read([1, 2, 3, 4, 5])], take('median'))).toMatchObject({ value: 3, low: null, high: null, level: null });
  });

  it('of ten runs from the second to the ninth reading in order', () => {
    expect(result([read(sleep)], take('median'))).toMatchObject({ value: 0.35, low: -1.2, high: 3.4, level: 0.95 });
  });

  it('does not underflow for a long list', () => {
    const { rank, coverage } = medianRank(5000)!;
    // Normal approximation: n/2 − 1.96·√n/2 = 2430.7.
    expect(Math.abs(rank - 2431)).toBeLessThanOrEqual(1);
    expect(coverage).toBeGreaterThanOrEqual(0.95);
  });

  it('that falls on ‘or more’ is a bound', () => {
    expect(result([read([10, 20, 50, 50, 50], { kind: 'count', orMore: [false, false, true, true, true] })], take('median'))).toMatchObject({ value: 50, bound: 'at-least', high: null });
  });
});

describe('a median with readings that are ‘or more’', () => {
  const open = (values: number[], orMore: number[]) => run([read(values, { orMore: values.map((_, index) => orMore.includes(index)) })], [take('median')]);

  it('is only known within limits where one of them may belong to the other half', () => {
    // The true value of ‘3 or more’ lies anywhere above 3: of x, 5, 7 the middle one is 5 to 7.
    const { results, notes } = open([3, 5, 7], [0]);
    expect(results.result).toMatchObject({ bound: 'between', low: 5, high: 7 });
    expect(notes.join(' ')).toContain('the median of these 3 is between 5 and 7');
    // In the upper half already it moves nothing.
    expect(open([3, 5, 7], [2]).results.result).toMatchObject({ bound: 'exact', value: 5 });
  });

  it('has no upper end of its interval where a low one may be the highest', () => {
    // Seven readings: from the lowest to the highest (1 − 2/2⁷ = 98.4 %), and ‘3 or more’ may be the highest.
    expect(open([3, 5, 6, 7, 8, 9, 10], [0]).results.result).toMatchObject({ bound: 'between', low: 3, high: null });
    expect(open([3, 5, 6, 7, 7, 9, 10], [0]).results.result).toMatchObject({ bound: 'exact', value: 7, low: 3, high: null, level: 0.95 });
    expect(open([3, 5, 6, 7, 8, 9, 10], [3, 4, 5, 6]).results.result).toMatchObject({ bound: 'at-least', value: 7, low: 3, high: null });
  });
});

describe('grades', () => {
  const grades = [0, 1, 2, 3, 4, 5].map((grade) => ({ grade, meaning: `meaning ${grade}` }));

  it('have the median with its meaning, and the range where an interval takes more of them', () => {
    const { results, notes } = run([read([4, 5, 4], { kind: 'grade', grades })], [take('median-grade')]);
    expect(results.result).toMatchObject({ value: 4, low: 4, high: 5, level: null });
    expect(notes.join(' ')).toMatch(/Result 4: meaning 4.*range of 3 grades, which holds the median in 75 %/);
  });

  it('off the scale are refused at their place', () => {
    expect(() => run([read([4, 6], { kind: 'grade', grades })], [take('median-grade')])).toThrow(expect.objectContaining({ field: 'readings[0].values[1]' }));
  });
});

describe('a share', () => {
  it('has the exact interval that R prints for binom.test(682, 925), Mendel’s peas', () => {
    const values = Array.from({ length: 925 }, (_, index) => (index < 682 ? 1 : 0));
    const { value, low, high } = result([read(values, { kind: 'yes-no' })], take('share-passing'));
    // R's own example of binom.test: 0.7372973, 95 percent confidence interval 0.7076683 0.7654066 (Conover 1971, p. 97).
    expect(value).toBeCloseTo(73.72973, 4);
    expect(low).toBeCloseTo(70.76683, 4);
    expect(high).toBeCloseTo(76.54066, 4);
  });

  it('of numbers counts those within what passes, and cannot be told from ‘or more’ below an upper end', () => {
    expect(result([read([1, 2, 3, 4])], take('share-passing', { passes: { lower: 2, upper: 3 } })).value).toBe(50);
    expect(() => result([read([1, 2], { orMore: [false, true] })], take('share-passing', { passes: { lower: null, upper: 3 } }))).toThrow(/cannot be told/);
  });
});

describe('the other statistics', () => {
  it('give the change and the ratio row by row', () => {
    const two = [read([90, 80, null], {}), { key: 'before', values: [100, 100, 50] }];
    expect(result(two, take('change-pct', { against: 'before' }))).toMatchObject({ value: -15, n: 2, unit: '%' });
    expect(result(two, take('ratio', { against: 'before' })).value).toBeCloseTo(0.85, 12);
    expect(() => result([read([1]), { key: 'before', values: [0] }], take('change-pct', { against: 'before' }))).toThrow(expect.objectContaining({ field: 'readings[1].values[0]' }));
  });

  it('count per area with Garwood’s limits', () => {
    // F. Garwood, Biometrika 28 (1936) 437: ten counted, 95 %: 4.80 to 18.39. Five rows of 20 cm² are one square decimetre.
    const { value, low, high, unit } = result([read([3, 2, 1, 4, 0], { kind: 'count' })], take('count-per-area', { areaCm2: 20 }));
    expect([value, unit]).toEqual([10, '/dm²']);
    expect(low).toBeCloseTo(4.8, 1);
    expect(high).toBeCloseTo(18.39, 2);
  });

  it('give the lowest and the highest without an interval, and what they say of the rest', () => {
    const { results, notes } = run([read([3, 1, 2])], [take('minimum')]);
    expect(results.result).toMatchObject({ value: 1, low: null, n: 3 });
    // 0.05^(1/3) = 0.368
    // The sentence promises no more than 36 %: S. S. Wilks 1941, rounded down.
    expect(notes.join(' ')).toMatch(/at least 36 % of the material lies at or above/);
  });

  it('leave the lowest or highest open where that one was not read to its end', () => {
    const counts = (values: number[], orMore: boolean[]) => [read(values, { kind: 'count', orMore })];
    const highest = run(counts([3, 9], [false, true]), [take('maximum')]);
    expect(highest.results.result).toMatchObject({ value: 9, bound: 'at-least', high: null });
    expect(highest.notes).toEqual([]);
    expect(result(counts([3, 9], [true, true]), take('minimum'))).toMatchObject({ value: 3, bound: 'at-least', high: null });
    // ‘3 or more’ and 9: the lowest of the two is 3 to 9.
    expect(result(counts([3, 9], [true, false]), take('minimum'))).toMatchObject({ bound: 'between', low: 3, high: 9 });
    expect(result(counts([3, 9], [false, true]), take('minimum'))).toMatchObject({ value: 3, bound: 'exact' });
  });

  it('say where counts lie in clusters, by the index of dispersion', () => {
    const notes = (values: number[]) => run([read(values, { kind: 'count' })], [take('count-per-area', { areaCm2: 20 })]).notes.join(' ');
    // Mean 4, four degrees of freedom: 4·14/4 = 14 lies above 9.488 of the chi-square table (5 %), 4·9/4 = 9 below it.
    expect(notes([0, 2, 4, 4, 10])).toMatch(/variance 3\.5 times the mean/);
    expect(notes([1, 3, 3, 4, 9])).not.toMatch(/variance/);
  });
});

describe('what cannot be worked out', () => {
  it.each([
    [[read([1.5], { kind: 'count' })], take('mean'), 'readings[0].values[0]'],
    [[read([2], { kind: 'yes-no' })], take('share-passing'), 'readings[0].values[0]'],
    [[read([1])], take('median-grade'), 'properties[0].statistic'],
    [[read([1])], take('ratio'), 'properties[0].against'],
    [[read([1])], take('share-passing'), 'properties[0].passes'],
    [[read([1], { kind: 'count' })], take('count-per-area'), 'properties[0].areaCm2'],
    [[read([1])], take('mean', { reading: 'y' }), 'properties[0].reading'],
    [[read([1], { kind: 'grade' })], take('median-grade'), 'readings[0].grades'],
    [[read([1, 2], { orMore: [true] })], take('mean'), 'readings[0].orMore'],
    [[read([1]), { key: 'before', values: [1], kind: 'yes-no' }], take('ratio', { against: 'before' }), 'properties[0].against'],
    [[read([1])], take('share-passing', { passes: { lower: 3, upper: 2 } }), 'properties[0].passes.lower'],
  ])('is refused at its field (%#)', (readings, property, field) => {
    expect(() => run(readings, [property])).toThrow(expect.objectContaining({ field }));
  });

  it('flags fewer replicates than the method asks for', () => {
    expect(run([read([1, 2, null])], [take('mean')], { replicates: 5 }).flags).toEqual([expect.objectContaining({ code: 'few-replicates', text: expect.stringMatching(/^2 of the 5/) })]);
  });

  it('leaves a property without readings without a value', () => {
    expect(run([read([null, null])], [take('mean')]).results.result).toMatchObject({ value: null, n: 0 });
  });
});
