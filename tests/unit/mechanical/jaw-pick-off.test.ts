import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { jawPickOffCalculation } from '../../../shared-lib/mechanical/jaw-pick-off.calculation.ts';
import { jawPickOffMethod } from '../../../shared-lib/mechanical/jaw-pick-off.method.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (input: unknown) => runCalculation(jawPickOffCalculation, input);
const seals = (...steps: [celsius: number, ...grades: number[]][]) => steps.flatMap(([celsius, ...grades]) => grades.map((grade) => ({ celsius, grade })));

describe('the temperature at which pick-off begins', () => {
  it('lies between the highest clean step and the lowest that picked, in whatever order they were sealed', () => {
    const { results, table, notes } = run({ seals: seals([190, 3, 4, 2], [170, 5, 5, 5], [180, 5, 4, 5]), sealingC: 150 });
    expect(results.begins).toMatchObject({ value: 175, low: 170, high: 180, bound: 'between' });
    expect(results.margin).toMatchObject({ value: 25, low: 20, high: 30, bound: 'between' });
    expect(table.map(({ celsius, picked }) => [celsius, picked])).toEqual([[170, 0], [180, 1], [190, 3]]);
    // Exact: 1 − 0.025^(1/3) = 70.76 %.
    expect(notes.join(' ')).toContain('3 clean seals at 170 °C leave room for up to 71 %');
    expect(results.gradeAtSealing!.value).toBeNull();
  });

  it('is a lower bound when none picked, an upper one when the first did', () => {
    expect(run({ seals: seals([150, 5], [220, 5]) }).results.begins).toMatchObject({ value: 220, high: null, bound: 'at-least' });
    expect(run({ seals: seals([150, 3], [160, 2]), sealingC: 140 }).results).toMatchObject({ begins: { value: 150, low: null, bound: 'at-most' }, margin: { value: 10, bound: 'at-most' } });
  });

  it('moves with the grade that counts as picked off', () => {
    const given = { seals: seals([150, 5], [160, 4], [170, 2]) };
    expect(run(given).results.begins).toMatchObject({ low: 150, high: 160 });
    expect(run({ ...given, pickedBelow: 4 }).results.begins).toMatchObject({ low: 160, high: 170 });
  });

  it('gives the grade at the sealing temperature, the worse of two middle ones', () => {
    expect(run({ seals: seals([150, 5, 4, 4, 5]), sealingC: 150 }).results).toMatchObject({ gradeAtSealing: { value: 4, low: 4, high: 5 }, worst: { value: 4 } });
  });

  it('flags a clean step above one that picked, and coarse steps', () => {
    expect(run({ seals: seals([150, 5], [160, 4], [170, 5], [180, 3]) }).flags.map(({ code }) => code)).toEqual(['clean-above']);
    expect(run({ seals: seals([150, 5], [180, 4]) }).flags.map(({ code }) => code)).toEqual(['coarse-steps']);
  });

  it.each([
    ['no seal', { seals: [] }, 'seals'],
    ['a grade off the scale', { seals: seals([150, 6]) }, 'seals[0].grade'],
    ['half a grade', { seals: seals([150, 2.5]) }, 'seals[0].grade'],
    ['a temperature that no jaw has', { seals: seals([900, 5]) }, 'seals[0].celsius'],
    ['a count from grade 0', { seals: seals([150, 5]), pickedBelow: 0 }, 'pickedBelow'],
  ])('refuses %s', (_, input, field) => {
    expect(refusal(() => run(input)).field).toBe(field);
  });

  it('names cells and conditions of the sheet', () => {
    expect(refusal(() => jawPickOffMethod.evaluate(bench([{}, { celsius: 150, grade: 4.5 }]))).field).toBe('rows[1].grade');
    expect(refusal(() => jawPickOffMethod.evaluate(bench([{ celsius: 150 }]))).field).toBe('rows[0].grade');
    expect(refusal(() => jawPickOffMethod.evaluate(bench([{ celsius: 150, grade: 4 }], { pickedBelow: 4.5 }))).field).toBe('conditions.pickedBelow');
  });
});
