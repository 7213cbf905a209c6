import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { crinkleCalculation } from '../../../shared-lib/mechanical/crinkle.calculation.ts';
import { crinkleMethod } from '../../../shared-lib/mechanical/crinkle.method.ts';
import { scratchCalculation } from '../../../shared-lib/mechanical/scratch.calculation.ts';
import { scratchMethod } from '../../../shared-lib/mechanical/scratch.method.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const crinkle = (input: unknown) => runCalculation(crinkleCalculation, input);
const scratch = (input: unknown) => runCalculation(scratchCalculation, input);

describe('crinkle', () => {
  it('gives the worse of two middle grades and the mean removed', () => {
    // Percents by hand: mean 4, s 2, t(0.975, 2) = 4.30265: 4 ± 4.9682, cut at 0.
    const { results } = crinkle({ specimens: [{ grade: 5, removedPct: 2 }, { grade: 4, removedPct: 4 }, { grade: 3, removedPct: 6 }, { grade: 5 }] });
    expect(results.grade).toMatchObject({ value: 4, low: 3, high: 5, n: 4 });
    expect(results.removedPct).toMatchObject({ value: 4, low: 0, n: 3 });
    expect(results.removedPct!.high).toBeCloseTo(8.9682, 3);
  });

  it('does with grades alone or percents alone', () => {
    expect(crinkle({ specimens: [{ grade: 2 }] })).toMatchObject({ results: { removedPct: { value: null } }, figures: [{ id: 'grades' }] });
    expect(crinkle({ specimens: [{ removedPct: 2 }] })).toMatchObject({ results: { grade: { value: null }, removedPct: { value: 2, low: null } }, figures: [{ id: 'removed' }] });
  });

  it('flags counts of flexes that do not compare', () => {
    expect(crinkle({ specimens: [{ grade: 2 }], flexes: 10 }).flags).toEqual([]);
    expect(crinkle({ specimens: [{ grade: 2 }], flexes: 3 }).flags[0]).toMatchObject({ code: 'flexes' });
    expect(crinkleMethod.evaluate(bench([{ grade: 2 }], { flexes: 3 })).flags[0]).toMatchObject({ where: 'conditions.flexes' });
  });

  it.each([
    ['an empty specimen', { specimens: [{ grade: 1 }, {}] }, 'specimens[1].grade'],
    ['a grade off the scale', { specimens: [{ grade: 6 }] }, 'specimens[0].grade'],
    ['a negative grade', { specimens: [{ grade: -1 }] }, 'specimens[0].grade'],
    ['half a grade', { specimens: [{ grade: 3.5 }] }, 'specimens[0].grade'],
    ['more than 100 %', { specimens: [{ removedPct: 101 }] }, 'specimens[0].removedPct'],
    ['half a flex', { specimens: [{ grade: 1 }], flexes: 9.5 }, 'flexes'],
    ['no specimen', { specimens: [] }, 'specimens'],
  ])('refuses %s', (_, input, field) => {
    expect(refusal(() => crinkle(input)).field).toBe(field);
  });

  it('names the cell on the sheet', () => {
    expect(refusal(() => crinkleMethod.evaluate(bench([{}, { grade: 3.5 }]))).field).toBe('rows[1].grade');
    expect(refusal(() => crinkleMethod.evaluate(bench([{}, { label: 'red' }]))).field).toBe('rows[0].grade');
    expect(refusal(() => crinkleMethod.evaluate(bench([{ grade: 3 }], { flexes: 2.5 }))).field).toBe('conditions.flexes');
  });
});

describe('scratch', () => {
  it('is at least the highest load where none scratched', () => {
    const { results, figures } = scratch({ specimens: [{ heldN: 10 }, { heldN: 12 }] });
    expect(results.load).toMatchObject({ low: 11, high: null, bound: 'at-least' });
    expect(results.weakest).toMatchObject({ value: 10, bound: 'at-least' });
    expect(figures[0]!.series[0]!.points).toMatchObject([{ open: 'up' }, { open: 'up' }]);
  });

  it('of equal brackets is the bracket itself', () => {
    const same = { heldN: 3, scratchedN: 4 };
    expect(scratch({ specimens: [same, same, same] }).results.load).toMatchObject({ value: 3.5, low: 3, high: 4, bound: 'between', level: null });
  });

  it('counts a specimen that was never scratched as a lower bound', () => {
    const specimens = [{ heldN: 2, scratchedN: 2.5 }, { heldN: 3, scratchedN: 3.5 }, { heldN: 4, scratchedN: 4.5 }];
    const without = scratch({ specimens }).results;
    const { results, notes } = scratch({ specimens: [...specimens, { heldN: 5 }] });
    expect(without.load).toMatchObject({ bound: 'exact', level: 0.95 });
    expect(without.load!.value).toBeCloseTo(3.25, 6);
    expect(results.load!.value!).toBeGreaterThan(without.load!.value! + 0.3);
    expect(results.weakest).toMatchObject({ value: 2.25, low: 2, high: 2.5, bound: 'between' });
    expect(notes.join(' ')).toContain('1 of 4 specimens was not scratched');
  });

  it('leaves everything below the first load open, and flags it and coarse steps', () => {
    const { results, flags } = scratch({ specimens: [{ scratchedN: 1 }, { heldN: 1, scratchedN: 5 }] });
    expect(results.weakest).toMatchObject({ low: 0, high: 1 });
    expect(flags.map(({ code }) => code)).toEqual(['first-load', 'coarse-steps']);
  });

  it.each([
    ['nothing', { specimens: [{}] }, 'specimens[0].grade'],
    ['loads in the wrong order', { specimens: [{ heldN: 5, scratchedN: 4 }] }, 'specimens[0].scratchedN'],
    ['the same load twice', { specimens: [{ heldN: 5, scratchedN: 5 }] }, 'specimens[0].scratchedN'],
    ['no load', { specimens: [{ heldN: 0 }] }, 'specimens[0].heldN'],
    ['a grade off the scale', { specimens: [{ grade: 7 }] }, 'specimens[0].grade'],
  ])('refuses %s', (_, input, field) => {
    expect(refusal(() => scratch(input)).field).toBe(field);
  });

  it('on the sheet keeps fingernail and loads apart and names cells', () => {
    expect(scratchMethod.evaluate(bench([{ grade: 4 }, {}, { grade: 3 }], { tool: 'fingernail' })).results.grade).toMatchObject({ value: 3, n: 2 });
    expect(refusal(() => scratchMethod.evaluate(bench([{ grade: 4 }, { heldN: 3 }], { tool: 'fingernail' }))).field).toBe('rows[1].heldN');
    expect(refusal(() => scratchMethod.evaluate(bench([{}, { heldN: 3, scratchedN: 2 }], { tool: 'stylus' }))).field).toBe('rows[1].scratchedN');
    expect(scratchMethod.evaluate(bench([{}, { scratchedN: 2 }], { tool: 'stylus' })).flags[0]).toMatchObject({ where: 'rows[1].scratchedN', text: expect.stringMatching(/^Specimen 2 /) as string });
  });
});
