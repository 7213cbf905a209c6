import { describe, expect, it } from 'vitest';
import type { Property } from '../../../shared-lib/method/method.ts';
import type { Response } from '../../../shared-lib/notebook/trial-entries.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import type { ColumnTrial } from '../../../shared-lib/trial/column-trial.ts';
import { responseColumn } from '../../../shared-lib/trial/response-column.ts';
import type { TrialReading } from '../../../shared-lib/trial/trial-reading.ts';

const property: Property = { key: 'mean', title: 'Bond', unit: 'N/15 mm', better: 'higher', limited: true, headline: true };
const graded: Property = { ...property, key: 'grade', title: 'Rub grade', unit: '', kind: 'grade' };
const response: Response = { methodId: 'lamination-bond', property: 'mean', goal: 'higher', target: null, lowest: null, highest: null, weight: 1 };
const trial = (name: string, readings: TrialReading[]): ColumnTrial => ({ trialId: name, name, control: name === 'R0', readings, tests: [] });
const exact = (...values: number[]): TrialReading[] => values.map((value) => ({ value }));

describe('a column of the trials table', () => {
  it('compares grades by rank, with the median and no distance', () => {
    const column = responseColumn(response, graded, [trial('R0', exact(2, 2, 3, 2, 2, 3)), trial('R1', exact(4, 5, 5, 4, 5, 4))]);
    expect(column.cells.R1).toMatchObject({ text: 'median 4.5', intervalText: '', difference: { value: null, text: '', word: 'better', star: '*' } });
    expect(column.comparison.procedure).toContain('Mann–Whitney');
    // Complete separation of 6 and 6: p = 2/C(12, 6) = 2/924, counted by hand.
    expect(column.cells.R1!.difference!.pValue).toBeCloseTo(2 / 924, 9);
  });

  it('says why a grade outside its scale cannot be compared, and still shows the rest', () => {
    const column = responseColumn(response, graded, [trial('R0', exact(2, 3)), trial('R1', exact(7, 3))]);
    expect(column.comparison).toMatchObject({ procedure: '', conclusions: [] });
    expect(column.comparison.why[0]).toContain('outside the scale');
    expect(column.cells.R1!.n).toBe(2);
  });

  it('does not tell identical or constant trials apart', () => {
    const column = responseColumn(response, property, [trial('R0', exact(3, 3, 3)), trial('R1', exact(3, 3, 3))]);
    expect(column.cells.R1!.difference).toMatchObject({ word: 'open', star: '' });
    expect(JSON.stringify(column)).not.toMatch(/NaN|Infinity/);
  });

  it('shows a trial known only by bounds as bounds', () => {
    const torn: TrialReading[] = [3.1, 3.2, 3.4].map((value) => ({ value, open: 'up' }));
    const column = responseColumn(response, property, [trial('R0', exact(2.9, 3, 3.1)), trial('R1', torn)]);
    expect(column.cells.R1!.text).toContain('≥');
    expect(column.cells.R1!.strip!.bound).toBe('at-least');
    expect(column.cells.R1!.note).not.toBe('');
  });

  const crowd = (prefix: string, read: (value: number) => TrialReading) => {
    const random = seededRandom(5);
    return Array.from({ length: 200 }, (_, index) => trial(`${prefix}${index}`, Array.from({ length: 5 }, () => read(3 + (index % 10) * 0.05 + 0.3 * random.normal()))));
  };

  it.each<[string, Property, ColumnTrial[]]>([
    ['numbers against a control', property, crowd('R', (value) => ({ value }))],
    ['numbers with one another', property, crowd('T', (value) => ({ value }))],
    ['grades against a control', graded, crowd('R', (value) => ({ value: Math.min(5, Math.max(0, Math.round(value))) }))],
  ])('is there within seconds for 200 trials: %s', (_what, of, trials) => {
    const started = performance.now();
    const column = responseColumn(response, of, trials);
    expect(Object.keys(column.cells)).toHaveLength(200);
    expect(column.comparison.procedure).not.toBe('');
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  it('compares 200 trials of brackets with the control, and sums each of them up', () => {
    const low = (value: number) => Math.floor(value * 10) / 10;
    const started = performance.now();
    const column = responseColumn(response, property, crowd('R', (value) => ({ value: low(value) + 0.05, low: low(value), high: low(value) + 0.1 })));
    expect(column.comparison.procedure).toBe('profile likelihood, Šidák');
    expect(column.cells.R7!.difference!.intervalText).toMatch(/95 % interval/);
    expect(column.cells.R7!.strip!.readings).toHaveLength(5);
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  it('keeps the flags of very many trials to a few', () => {
    const { comparison } = responseColumn(response, property, Array.from({ length: 60 }, (_, index) => trial(`R${index}`, index % 2 === 0 ? exact(3 + index / 100) : exact(3, 3.1, 3.2))));
    const alone = comparison.flags.filter(({ code }) => code === 'one-reading');
    expect(alone).toHaveLength(6);
    expect(alone.at(-1)!.text).toBe('The same holds for 25 more trials.');
    expect(comparison.flags.every(({ where }) => where === '')).toBe(true);
  });

  it('prints every mean of a column with as many decimals, and its interval too', () => {
    const column = responseColumn(response, property, [trial('R0', exact(2.01, 2.02, 2.03, 2.02)), trial('R1', exact(1.2, 3.4, 2.2)), trial('R2', exact(2.11, 2.35, 2.24, 2.18)), trial('R3', exact(2.5))]);
    const texts = Object.values(column.cells).map(({ text }) => /\.(\d+)/.exec(text)?.[1]?.length);
    expect(new Set(texts)).toEqual(new Set([2]));
    for (const { intervalText } of Object.values(column.cells)) expect(intervalText).toMatch(/^$|interval −?\d+\.\d\d to \d+\.\d\d$/);
  });

  it('takes a grade by the scale of its property: 1 to 10, drawn on the whole of it', () => {
    const ten: Property = { ...graded, scale: { low: 1, high: 10 } };
    const column = responseColumn(response, ten, [trial('R0', exact(7, 6, 7, 6)), trial('R1', exact(9, 10, 9, 10))]);
    expect(column.comparison.procedure).toContain('Mann–Whitney');
    expect(column.comparison.domain[0]).toBeLessThan(1);
    expect(column.comparison.domain[1]).toBeGreaterThan(10);
    const below = responseColumn(response, ten, [trial('R0', exact(7, 0)), trial('R1', exact(9, 10))]);
    expect(below.comparison.why[0]).toMatch(/A grade of R0 is 0, outside the scale from 1 to 10/);
  });

  it('says the direction of every pair that is named, also among very many', () => {
    const many = Array.from({ length: 40 }, (_, index) => trial(`R${index}`, exact(...[0, 0.1, -0.1, 0.05].map((step) => 3 + (index > 35 ? 2 : 0) + step))));
    const { conclusions } = responseColumn(response, property, many).comparison;
    expect(conclusions.filter((sentence) => /^R3[6-9] is 2\S* N\/15 mm higher than R0, .*: better\.$/.test(sentence))).toHaveLength(4);
    expect(conclusions.join(' ')).toContain('4 of 39 pairs can be told apart.');
  });
});
