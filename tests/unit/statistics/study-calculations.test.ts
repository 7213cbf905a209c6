import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import type { Calculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { calibrationCalculation } from '../../../shared-lib/statistics/calibration.calculation.ts';
import { capabilityCalculation } from '../../../shared-lib/statistics/capability.calculation.ts';
import { controlChartCalculation } from '../../../shared-lib/statistics/control-chart.calculation.ts';
import { desirabilityCalculation } from '../../../shared-lib/statistics/desirability.calculation.ts';
import { equivalenceCalculation } from '../../../shared-lib/statistics/equivalence.calculation.ts';
import { measurementStudyCalculation } from '../../../shared-lib/statistics/measurement-study.calculation.ts';
import { sampleSizeCalculation } from '../../../shared-lib/statistics/sample-size.calculation.ts';
import { twoFactorCalculation } from '../../../shared-lib/statistics/two-factor.calculation.ts';
import { runSignals } from '../../../shared-lib/statistics/run-rules.ts';

function refusal(calculation: Calculation, input: object): InputError {
  try {
    runCalculation(calculation, input);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('the input was taken');
}

/** Every cell of a crossed study. */
function crossed(read: (appraiser: number, part: number, trial: number) => object, [appraisers, parts, trials]: [number, number, number]) {
  return Array.from({ length: appraisers }, (_, a) => Array.from({ length: parts }, (__, p) => Array.from({ length: trials }, (___, t) => ({ appraiser: `P${a}`, part: p, trial: t, ...read(a, p, t) })))).flat(2);
}

describe('equivalence', () => {
  it('says in words whether the interval lies within the bounds', () => {
    const shown = runCalculation(equivalenceCalculation, { a: [3.1, 3, 3.2, 3.1], b: [3.05, 3.1, 3.15, 3], lowerBound: -0.3, upperBound: 0.3, unit: 'N/15 mm' });
    expect(shown.notes[0]).toMatch(/^Equivalent: .* within −0.3 to 0.3\.$/);
    expect(shown.results.difference!.low!).toBeGreaterThan(-0.3);
    const open = runCalculation(equivalenceCalculation, { a: [1, 2], b: [1, 1.5, 2, 1], lowerBound: -1, upperBound: 1 });
    expect(open.notes[0]).toMatch(/^Equivalence is not shown/);
  });

  it.each([
    [{ a: [1, 1], b: [1, 1], lowerBound: -1, upperBound: 1 }, 'a'],
    [{ a: [1, 2], b: [1, 2, 3], lowerBound: -1, upperBound: 1, design: 'paired' }, 'b'],
    [{ a: [1, 2], b: [1, 2], lowerBound: 1, upperBound: -1 }, 'lowerBound'],
    [{ a: [1, -2], b: [1, 2], lowerBound: 0.8, upperBound: 1.2, scale: 'ratio' }, 'a[1]'],
    [{ a: [1, 2], b: [1, 2], lowerBound: -1, upperBound: 1.2, scale: 'ratio' }, 'lowerBound'],
  ])('refuses %j', (input, field) => expect(refusal(equivalenceCalculation, input).field).toBe(field));
});

describe('two factors', () => {
  const cell = (a: number, b: string, ...values: number[]) => values.map((value) => ({ a, b, value }));

  it('draws a line per level of the second factor and says that the effects depend on one another', () => {
    const { figures, notes, table } = runCalculation(twoFactorCalculation, { nameA: 'wax', nameB: 'promoter', readings: [...cell(1, 'x', 1, 1.1, 0.9), ...cell(1, 'y', 2, 2.1), ...cell(2, 'x', 1.5, 1.4), ...cell(2, 'y', 4, 4.1, 3.9)] });
    expect(notes[0]).toMatch(/effect of wax depends on promoter/);
    expect(figures[0]!.series.map(({ name }) => name)).toEqual(['promoter x', 'promoter y']);
    expect(table.map(({ term }) => term)).toEqual(['wax', 'promoter', 'wax × promoter', 'residual']);
  });

  it('leaves the interaction out where a combination is missing or read once, with a flag', () => {
    const missing = runCalculation(twoFactorCalculation, { readings: [...cell(1, 'x', 1, 1.1, 0.9), ...cell(1, 'y', 2, 2.1), ...cell(2, 'x', 1.5, 1.4)] });
    expect(missing.flags[0]).toMatchObject({ code: 'missing-cells', text: expect.stringContaining('2 with y') });
    expect(missing.results.pInteraction!.value).toBeNull();
    const once = runCalculation(twoFactorCalculation, { readings: [...cell(1, 'x', 1), ...cell(1, 'y', 2), ...cell(2, 'x', 1.5), ...cell(2, 'y', 4)] });
    expect(once.flags[0]!.code).toBe('single-readings');
  });

  it('refuses factors that cannot be told apart', () => {
    expect(refusal(twoFactorCalculation, { readings: [...cell(1, 'x', 1, 2, 3), ...cell(2, 'y', 4, 5)] }).message).toMatch(/told apart/);
    expect(refusal(twoFactorCalculation, { readings: [...cell(1, 'x', 1, 2), ...cell(1, 'y', 4, 5)] }).message).toMatch(/two levels/);
  });
});

describe('sample size', () => {
  it.each<[object, number]>([
    // R power.t.test: 22.02 and 63.77; one sample 33.37; power.prop.test 76.7; power.anova.test for a difference of
    // 2·√1.5 between two of four groups (between variance 1): 11.93 at within variance 3.
    [{ design: 'two-sample', difference: 1, standardDeviation: 1 }, 23],
    [{ design: 'two-sample', difference: 0.5, standardDeviation: 1, power: 0.8 }, 64],
    [{ design: 'one-sample', difference: 0.5, standardDeviation: 1, power: 0.8 }, 34],
    [{ design: 'one-way', groups: 4, difference: Math.sqrt(6), standardDeviation: Math.sqrt(3), power: 0.8 }, 12],
    [{ design: 'two-shares', shareA: 0.5, shareB: 0.75 }, 77],
    [{ design: 'pass-rate', passRate: 0.95 }, 59],
  ])('%j takes %i', (input, n) => expect(runCalculation(sampleSizeCalculation, input).results.perGroup!.value).toBe(n));

  it('reaches its power for the first time', () => {
    const { perGroup, power } = runCalculation(sampleSizeCalculation, { design: 'equivalence', difference: 0.3, standardDeviation: 0.2 }).results;
    expect(power!.value!).toBeGreaterThanOrEqual(0.9);
    expect(perGroup!.value).toBe(11);
  });

  it('says when it would take too many, and refuses what has no answer', () => {
    expect(runCalculation(sampleSizeCalculation, { design: 'two-sample', difference: 1e-9, standardDeviation: 1 }).results.perGroup!.bound).toBe('at-least');
    expect(refusal(sampleSizeCalculation, { design: 'equivalence', difference: 0.3, trueDifference: 0.3, standardDeviation: 1 }).field).toBe('trueDifference');
    expect(refusal(sampleSizeCalculation, { design: 'two-shares', shareA: 0.5, shareB: 0.5 }).field).toBe('shareB');
    expect(refusal(sampleSizeCalculation, { design: 'two-sample', difference: 0, standardDeviation: 1 }).field).toBe('difference');
    // Not only refused but at once: the non-central F of such a difference has more terms than can be summed.
    expect(refusal(sampleSizeCalculation, { design: 'one-way', groups: 4, difference: 1e15, standardDeviation: 1 }).message).toMatch(/at most 1000 times/);
    expect(runCalculation(sampleSizeCalculation, { design: 'one-way', groups: 4, difference: 1000, standardDeviation: 1 }).results.perGroup!.value).toBe(2);
  });
});

describe('measurement study', () => {
  it('of grades: agreement, kappa, and who grades differently', () => {
    const { results, flags, table } = runCalculation(measurementStudyCalculation, { scale: [0, 1, 2, 3, 4, 5], readings: crossed((a, p) => ({ grade: a === 2 ? Math.min(5, (p % 5) + 1) : p % 5 }), [3, 10, 1]) });
    expect(table).toHaveLength(3);
    expect(table[0]).toMatchObject({ a: 'P0', b: 'P1', agreementPct: 100, kappa: 1, weightedKappa: 1 });
    expect(results.agreementPct!.value).toBe(0);
    expect(results.weightedKappa!.value!).toBeGreaterThan(results.kappa!.value!);
    expect(flags.map(({ code, where, text }) => [code, where, text])).toEqual([['reads-differently', 'P2', expect.stringContaining('higher')]]);
  });

  it('of words in order', () => {
    const words = ['none', 'slight', 'strong'];
    const { results } = runCalculation(measurementStudyCalculation, { scale: words, readings: crossed((a, p) => ({ grade: words[(p + (a === 1 && p === 4 ? 1 : 0)) % 3]! }), [2, 9, 1]) });
    expect(results.kappa!.value!).toBeCloseTo(5 / 6, 1);
    expect(results.icc).toBeUndefined();
  });

  it('says what is missing', () => {
    const whole = crossed((a, p, t) => ({ value: p + t / 10 + a / 20 }), [2, 3, 2]);
    expect(refusal(measurementStudyCalculation, { readings: whole.slice(1) }).message).toMatch(/P0 has no reading of part 0, trial 0/);
    expect(refusal(measurementStudyCalculation, { readings: [...whole, whole[0]!] }).message).toMatch(/number the trials/);
    expect(refusal(measurementStudyCalculation, { readings: crossed((_, p) => ({ value: p }), [2, 3, 1]) }).message).toMatch(/two trials/);
    expect(refusal(measurementStudyCalculation, { readings: crossed(() => ({ value: 5 }), [2, 3, 2]) }).message).toMatch(/equal/);
    expect(refusal(measurementStudyCalculation, { readings: crossed((_, p) => ({ value: p }), [1, 3, 2]) }).message).toMatch(/two appraisers/);
    expect(refusal(measurementStudyCalculation, { scale: [0, 1], readings: crossed((_, p) => ({ grade: p }), [2, 3, 1]) }).field).toBe('readings[2].grade');
    expect(refusal(measurementStudyCalculation, { readings: [{ part: 1, appraiser: 'P0', value: 1 }, { part: 2, appraiser: 'P0', grade: 1 }] }).message).toMatch(/grade/);
  });

  it('gives the share of a tolerance that the method takes up, six standard deviations wide', () => {
    const readings = crossed((a, p, t) => ({ value: p + ((a * 7 + p * 3 + t * 5) % 4) / 10 }), [2, 4, 3]);
    const { gauge, gaugeTolerancePct } = runCalculation(measurementStudyCalculation, { readings, toleranceWidth: 2 }).results;
    expect(gaugeTolerancePct!.value).toBeCloseTo((100 * 6 * gauge!.value!) / 2, 10);
  });
});

describe('control chart', () => {
  const part = (points: number[]) => ({ points, centre: 0, lower: -3, upper: 3 });
  const codes = (points: number[]) => runSignals(part(points)).map(({ code, at }) => `${code} ${at}`);

  it.each<[string, number[], string[]]>([
    ['a point beyond', [0.1, -0.2, 3.1], ['beyond-limit 2']],
    ['two of three', [2.1, -0.5, 2.2], ['two-of-three 2']],
    ['four of five', [1.1, 1.5, -0.3, 1.2, 1.8], ['four-of-five 4']],
    ['nine on one side', [0.5, 0.2, 0.4, 0.1, 0.6, 0.3, 0.2, 0.5, 0.1], ['one-side 8']],
    ['six rising', [-0.9, -0.5, -0.2, 0.1, 0.4, 0.7], ['trend 5']],
    ['fourteen alternating', Array.from({ length: 14 }, (_, i) => (i % 2 ? 0.5 : -0.5)), ['alternating 13']],
    ['nothing', [0.5, -0.2, 0.4, -1.1, 0.6], []],
    ['opposite sides do not add up', [2.1, -2.1, 0.4], []],
  ])('%s', (_, points, expected) => expect(codes(points)).toEqual(expected));

  it('chooses the chart by the data, and refuses uneven subgroups', () => {
    const many = Array.from({ length: 3 }, (_, g) => Array.from({ length: 10 }, (__, i) => g + i));
    expect(runCalculation(controlChartCalculation, { subgroups: many }).results.sdCentre).toBeDefined();
    expect(runCalculation(controlChartCalculation, { subgroups: many.map((values) => values.slice(0, 4)) }).results.rangeCentre).toBeDefined();
    expect(runCalculation(controlChartCalculation, { values: [1, 1, 1] }).notes.join(' ')).toMatch(/coincide/);
    expect(refusal(controlChartCalculation, { subgroups: [[1, 2], [1]] }).field).toBe('subgroups[1]');
    expect(refusal(controlChartCalculation, {}).message).toMatch(/either/);
  });
});

describe('capability', () => {
  it('with one limit has cpk and ppk only', () => {
    const { results } = runCalculation(capabilityCalculation, { values: [3, 3.2, 2.9, 3.1, 3.05, 3.3], lowerLimit: 2 });
    expect(results.cp!.value).toBeNull();
    expect(results.cpk!.low!).toBeLessThan(results.cpk!.value!);
  });

  it('pp is six standard deviations into the tolerance', () => {
    // s of 1…5 is √2.5.
    const { pp, ppk } = runCalculation(capabilityCalculation, { values: [1, 4, 2, 5, 3], lowerLimit: -6, upperLimit: 9 }).results;
    expect(pp!.value).toBeCloseTo(15 / (6 * Math.sqrt(2.5)), 12);
    expect(ppk!.value).toBeCloseTo(6 / (3 * Math.sqrt(2.5)), 12);
  });

  it('refuses without limits, with crossed ones or without scatter', () => {
    expect(refusal(capabilityCalculation, { values: [1, 2] }).field).toBe('lowerLimit');
    expect(refusal(capabilityCalculation, { values: [1, 2], lowerLimit: 3, upperLimit: 2 }).field).toBe('lowerLimit');
    expect(refusal(capabilityCalculation, { values: [1, 1], lowerLimit: 0 }).field).toBe('values');
    expect(refusal(capabilityCalculation, { values: [1, 2, 3], lowerLimit: 0, subgroupSize: 2 }).field).toBe('subgroupSize');
  });
});

describe('calibration', () => {
  it('flags what lies outside, and gives no interval where the slope is unsure', () => {
    const unsure = runCalculation(calibrationCalculation, { x: [0, 1, 2], y: [1, 5, 2], unknown: [[2]] });
    expect(unsure.table[0]).toMatchObject({ low: null, high: null });
    expect(unsure.flags.map(({ code }) => code)).toEqual(['outside-calibration', 'slope-unsure']);
  });

  it('weights small amounts more where asked', () => {
    const x = [1, 2, 4, 8, 16];
    const y = [2.02, 3.96, 8.1, 15.7, 33];
    const width = (weighting: string) => {
      const { low, high } = runCalculation(calibrationCalculation, { x, y, unknown: [[3]], weighting }).table[0] as { low: number; high: number };
      return high - low;
    };
    expect(width('1/x2')).toBeLessThan(width('1/x'));
    expect(width('1/x')).toBeLessThan(width('none'));
  });

  it('refuses what cannot be read off', () => {
    expect(refusal(calibrationCalculation, { x: [0, 1, 2], y: [1, 1, 1], unknown: [[2]] }).field).toBe('unknown[0]');
    expect(refusal(calibrationCalculation, { x: [1, 1, 1], y: [1, 2, 3] }).field).toBe('x');
    expect(refusal(calibrationCalculation, { x: [0, 1, 2], y: [1, 5, 2], weighting: '1/x' }).field).toBe('x[0]');
    expect(refusal(calibrationCalculation, { x: [0, 1, 2], y: [1, 5] }).field).toBe('y');
  });
});

describe('desirability', () => {
  it('ranks trials and does not rank those with gaps', () => {
    const { results, table, flags } = runCalculation(desirabilityCalculation, {
      responses: [{ name: 'bond', goal: 'higher', low: 1, target: 3 }, { name: 'haze', goal: 'lower', target: 1, high: 5 }],
      trials: [{ name: 'R1', values: [2, 2] }, { name: 'R2', values: [null, 2] }, { name: 'R3', values: [2.5, 5] }],
    });
    expect(results.best!.text).toBe('R1');
    // Half-way and three quarters: √(0.5·0.75).
    expect(results.desirability!.value).toBeCloseTo(Math.sqrt(0.375), 12);
    expect(table.map((row) => row.desirability)).toEqual([results.desirability!.value, null, 0]);
    expect(flags[0]!.where).toBe('trials[1]');
  });

  it('refuses limits that do not fit the goal', () => {
    expect(refusal(desirabilityCalculation, { responses: [{ name: 'bond', goal: 'higher', target: 3 }], trials: [{ name: 'R1', values: [2] }] }).field).toBe('responses[0]');
    expect(refusal(desirabilityCalculation, { responses: [{ name: 'bond', goal: 'lower', target: 3, high: 4 }], trials: [{ name: 'R1', values: [] }] }).field).toBe('trials[0].values');
  });
});

describe('any readings', () => {
  const small = fc.integer({ min: -3, max: 3 });
  const list = (least: number) => fc.array(small, { minLength: least, maxLength: 8 });
  const cases: [string, Calculation, fc.Arbitrary<object>][] = [
    ['equivalence', equivalenceCalculation, fc.record({ a: list(2), b: list(2), lowerBound: fc.constant(-1), upperBound: fc.constant(2), design: fc.constantFrom('welch', 'pooled', 'paired') })],
    ['two-factor', twoFactorCalculation, fc.record({ readings: fc.array(fc.record({ a: fc.constantFrom('1', '2', '3'), b: fc.constantFrom('x', 'y'), value: small }), { minLength: 4, maxLength: 14 }), type: fc.constantFrom('II', 'III') })],
    ['control-chart', controlChartCalculation, fc.record({ values: list(2) })],
    ['capability', capabilityCalculation, fc.record({ values: list(2), lowerLimit: fc.constant(-4), upperLimit: fc.constant(4) })],
    ['calibration', calibrationCalculation, fc.record({ x: fc.array(small, { minLength: 4, maxLength: 4 }), y: fc.array(small, { minLength: 4, maxLength: 4 }), unknown: fc.array(list(1), { maxLength: 2 }) })],
    ['measurement-study', measurementStudyCalculation, fc.record({ values: fc.array(small, { minLength: 12, maxLength: 12 }), key: fc.constantFrom('value', 'grade') }).map(({ values, key }) => ({ readings: crossed((a, p, t) => ({ [key]: values[a * 6 + p * 2 + t]! }), [2, 3, 2]) }))],
  ];

  it.each(cases)('%s gives a result or a refusal in words', (_, calculation, arbitrary) => {
    fc.assert(fc.property(arbitrary, (input) => {
      try {
        runCalculation(calculation, input);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        expect((error as InputError).message).not.toMatch(/cannot be given/);
      }
    }), { numRuns: 60 });
  });
});
