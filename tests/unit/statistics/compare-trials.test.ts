import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { compareTrialsCalculation } from '../../../shared-lib/statistics/compare-trials.calculation.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import anova from '../../reference/statistics/analysis-of-variance.json';

const run = (input: object) => runCalculation(compareTrialsCalculation, input);

function refusal(input: object): InputError {
  try {
    run(input);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('the input was taken');
}

const { ctrl, trt1, trt2, ...published } = anova.oneway.plantgrowth;
const growth = [{ name: 'R0', values: ctrl }, { name: 'R1', values: trt1 }, { name: 'R2', values: trt2 }];

describe('measured numbers', () => {
  it('gives the published F, Welch F and Tukey pairs, letters and a sentence per pair', () => {
    const { results, table, notes } = run({ groups: growth, unit: 'N/15 mm' });
    expect(results.F!.value).toBeCloseTo(published.F, 9);
    expect(results.pValue!.value).toBeCloseTo(published.p, 9);
    expect(results.welchF!.value).toBeCloseTo(published.welchF, 9);
    expect(results.welchP!.value).toBeCloseTo(published.welch_p, 9);
    expect(results.letters!.text).toBe('R0 ab, R1 b, R2 a');
    // R2 against R1: p 0.0120, 0.174 to 1.556 (R TukeyHSD); here R1 minus R2.
    expect(table[2]).toMatchObject({ kind: 'pair', a: 'R1', b: 'R2', method: 'Tukey–Kramer' });
    expect(table[2]!.p).toBeCloseTo(0.012006423979453, 8);
    expect(table[2]!.low).toBeCloseTo(-1.55621605141046, 6);
    expect(table[3]).toMatchObject({ kind: 'group', group: 'R0', n: 10, letters: 'ab', star: null });
    // The difference is 0.865: a tie in rounding.
    expect(notes.join(' ')).toMatch(/R1 is 0\.8[67] N\/15 mm lower than R2, 95 % interval 0\.17 to 1\.56\./);
    expect(notes).toContain('R0 cannot be told from R1 with these 10 specimens.');
    expect(notes.join(' ')).toMatch(/scatter alike/);
  });

  it('compares with a control alone, stars what differs, and says what it would take to know', () => {
    const { table, notes } = run({ groups: growth, control: 'R0', difference: 0.4 });
    const pairs = table.filter(({ kind }) => kind === 'pair');
    expect(pairs.map(({ a, b, method }) => [a, b, method])).toEqual([['R1', 'R0', 'Dunnett'], ['R2', 'R0', 'Dunnett']]);
    expect(table.filter(({ kind }) => kind === 'group').map(({ star }) => star)).toEqual([null, false, false]);
    expect(notes.join(' ')).toMatch(/R1 cannot be told from R0 with these 10 specimens; \d+ per trial would show a difference of 0.4\./);
  });

  it('judges each pair by its own spread where spreads or counts differ', () => {
    const wide = { name: 'R3', values: [1, 9, 3, 12, 5, 0, 14, 2] };
    const narrow = [0, 1].map((i) => ({ name: `N${i}`, values: [5.1, 5.2, 5, 5.3, 5.1, 5.2, 5.15, 5.05] }));
    expect(run({ groups: [...narrow, wide] }).table[0]!.method).toBe('Games–Howell');
    expect(run({ groups: [...narrow, wide], control: 'N0' }).table[0]!.method).toBe('Dunnett, separate spreads');
    expect(run({ groups: [{ name: 'few', values: [1, 2, 3] }, ...narrow, wide] }).table[0]!.method).toBe('Welch, simulated');
    const many = Array.from({ length: 30 }, (_, i) => ({ name: `M${i}`, values: i % 5 === 0 ? [1, 9, 3] : [5, 5.2, 5.1] }));
    expect(run({ groups: many }).table[0]!.method).toBe('Tamhane');
  });

  it('calls a difference of percentages percentage points', () => {
    const groups = [{ name: 'R0', values: [70, 71, 69, 70.5] }, { name: 'R1', values: [84, 85, 84.5, 85.5] }];
    expect(run({ groups, unit: '%' }).notes.join(' ')).toMatch(/R0 is 14\.\d+ percentage points lower than R1/);
  });

  it('draws every trial with its interval', () => {
    const { figures } = run({ groups: growth, control: 'R0' });
    expect(figures[0]!.x.categories).toEqual(['R0', 'R1', 'R2']);
    expect(figures[0]!.series[0]!.points).toHaveLength(30);
    expect(figures[0]!.lines![0]).toMatchObject({ name: 'R0', axis: 'y' });
  });
});

describe('grades', () => {
  it('are compared by rank', () => {
    const { results, table, notes } = run({ kind: 'grade', groups: [{ name: 'A', values: [1, 2, 2, 1, 2] }, { name: 'B', values: [4, 4, 5, 3, 4] }, { name: 'C', values: [4, 5, 5, 5, 4] }] });
    expect(results.F!.value).toBeNull();
    expect(results.pValue!.value!).toBeLessThan(0.01);
    expect(results.letters!.text).toBe('A b, B a, C a');
    expect(table[0]).toMatchObject({ a: 'A', b: 'B', difference: -2, method: 'Mann–Whitney, Holm' });
    // Completely apart, 5 against 5: 2 ways in 252, by Holm times 3.
    expect(table[0]!.p).toBeCloseTo((3 * 2) / 252, 12);
    expect(notes[0]).toMatch(/grades/);
  });

  it('take the ranks among all trials where two alone could never be told apart', () => {
    const groups = Array.from({ length: 5 }, (_, g) => ({ name: `R${g}`, values: [g, g, g] }));
    expect(run({ kind: 'grade', groups }).table[0]!.method).toBe('Dunn, Holm');
  });

  it('outside their scale are refused', () => {
    const error = refusal({ kind: 'grade', groups: [{ name: 'A', values: [1, 7] }, { name: 'B', values: [4] }] });
    expect(error.field).toBe('groups[0].values[1]');
    expect(run({ kind: 'grade', scale: { lowest: 1, highest: 10 }, groups: [{ name: 'A', values: [1, 7] }, { name: 'B', values: [4] }] }).results.pValue!.value).not.toBeNull();
  });
});

describe('readings that are only bounds', () => {
  const torn = { name: 'A', values: [2.9, { atLeast: 3.2 }, 3.1, { atLeast: 3 }, 3.3] };
  const weak = { name: 'B', values: [2.1, 2.4, 2.5, { low: 2, high: 2.4 }, { atMost: 2.6 }] };

  it('count as bounds', () => {
    const { table, notes } = run({ groups: [torn, weak], control: 'B' });
    expect(table[0]).toMatchObject({ a: 'A', b: 'B', method: 'profile likelihood, Šidák' });
    expect(table[0]!.difference as number).toBeGreaterThan(0.5);
    expect(table[0]!.p as number).toBeLessThan(0.05);
    expect(notes[0]).toMatch(/bounds/);
  });

  it('too coarse to show a spread are said to be so', () => {
    const coarse = { name: 'A', values: [{ low: 39, high: 40 }, { low: 39, high: 40 }, { low: 40, high: 41 }] };
    const { table, notes, flags } = run({ groups: [coarse, { name: 'B', values: [{ low: 37, high: 38 }, { low: 38, high: 39 }, { low: 40, high: 41 }, { low: 39, high: 40 }] }] });
    expect(table[0]).toMatchObject({ difference: null, low: null, high: null, p: null });
    expect(notes.join(' ')).toContain('A and B cannot be compared: their readings are too open or too coarse');
    expect(flags.map(({ text }) => text).join(' ')).toMatch(/^A: the brackets are too coarse to show any spread/);
  });

  it('alone give an order, or nothing, but no number that is not there', () => {
    const { table, flags } = run({ groups: [{ name: 'A', values: [2, 2.1, 2.2, 1.9, 2] }, { name: 'B', values: [{ atLeast: 3 }, { atLeast: 3.1 }, { atLeast: 3 }, { atLeast: 3.2 }] }] });
    expect(table[0]).toMatchObject({ difference: null, low: null, high: null });
    expect(table[0]!.p as number).toBeLessThan(0.05);
    expect(table.at(-1)).toMatchObject({ group: 'B', mean: null, high: null });
    expect(flags[0]!.code).toBe('mean-only-bounded');
  });
});

describe('odd input', () => {
  it.each<[string, object, RegExp]>([
    ['one reading each', { groups: [{ name: 'A', values: [1] }, { name: 'B', values: [4] }] }, /no spread/],
    ['no scatter at all', { groups: [{ name: 'A', values: [0.1, 0.1, 0.1] }, { name: 'B', values: [0.4, 0.4] }] }, /cannot be compared/],
    ['identical groups', { groups: [{ name: 'A', values: [1, 2, 3] }, { name: 'B', values: [1, 2, 3] }] }, /cannot be told from/],
    ['all equal grades', { kind: 'grade', groups: [{ name: 'A', values: [2, 2] }, { name: 'B', values: [2, 2] }] }, /All grades are equal/],
  ])('%s: says so', (_, input, words) => {
    const { notes, results } = run(input);
    expect(notes.join(' ')).toMatch(words);
    expect(results.letters).toBeDefined();
  });

  it.each([
    ['a group without readings', { groups: [{ name: 'A', values: [] }, { name: 'B', values: [1] }] }, 'groups[0].values'],
    ['one group', { groups: [{ name: 'A', values: [1] }] }, 'groups'],
    ['two of one name', { groups: [{ name: 'A', values: [1] }, { name: 'A', values: [2] }] }, 'groups[1].name'],
    ['a control that is not there', { groups: growth, control: 'R9' }, 'control'],
    ['bounds among grades', { kind: 'grade', groups: [{ name: 'A', values: [{ atLeast: 2 }] }, { name: 'B', values: [2] }] }, 'groups[0].values[0]'],
    ['crossed limits', { groups: [{ name: 'A', values: [{ low: 3, high: 2 }] }, { name: 'B', values: [2] }] }, 'groups[0].values[0]'],
    ['a word', { groups: [{ name: 'A', values: ['torn'] }, { name: 'B', values: [2] }] }, 'groups[0].values[0]'],
  ])('%s is refused', (_, input, field) => {
    expect(refusal(input).field).toBe(field);
  });

  it('any readings give a result or a refusal in words', () => {
    const value = fc.oneof(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 }).map((atLeast) => ({ atLeast })), fc.integer({ min: 0, max: 5 }).map((atMost) => ({ atMost })));
    const groups = fc.array(fc.array(fc.oneof({ weight: 4, arbitrary: fc.integer({ min: 0, max: 5 }) }, { weight: 1, arbitrary: value }), { minLength: 1, maxLength: 5 }), { minLength: 2, maxLength: 4 });
    fc.assert(fc.property(groups, fc.constantFrom('number', 'grade'), fc.boolean(), (given, kind, withControl) => {
      const input = { kind, groups: given.map((values, i) => ({ name: `R${i}`, values })), ...(withControl && { control: 'R1' }) };
      try {
        run(input);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        expect((error as InputError).message).not.toMatch(/cannot be given/);
      }
    }), { numRuns: 60 });
  });

  it('200 trials are compared in seconds', () => {
    const random = seededRandom(4);
    const groups = Array.from({ length: 200 }, (_, i) => ({ name: `R${i}`, values: Array.from({ length: 3 + (i % 5) }, () => 3 + (1 + (i % 3)) * random.normal()) }));
    const start = performance.now();
    expect(run({ groups }).table).toHaveLength(19_900 + 200);
    expect(run({ groups, control: 'R7' }).table).toHaveLength(199 + 200);
    expect(performance.now() - start).toBeLessThan(30_000);
  });
});
