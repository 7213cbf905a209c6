import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import type { CellValue } from '../../../shared-lib/method/method.ts';
import { pairServings, triangleServings } from '../../../shared-lib/release/blind-servings.ts';
import { odourIntensityMethod } from '../../../shared-lib/release/odour-intensity.method.ts';
import { odourPanelCalculation } from '../../../shared-lib/release/odour-panel.calculation.ts';
import { odourTriangleMethod } from '../../../shared-lib/release/odour-triangle.method.ts';
import { benchOf } from './bench.ts';

const run = (input: unknown) => runCalculation(odourPanelCalculation, input);

describe('odour-panel', () => {
  it('gives median and range of the grades, and both parts at once', () => {
    const { results, flags } = run({ assessors: 12, correct: 8, intensities: [1, 2, 2, 3, 1, 2], controlIntensities: [0, 0, 0, 0.5, 0, 0] });
    expect(results.median!.value).toBe(2);
    expect(results.range).toMatchObject({ value: 2, low: null, high: null, text: '2, from 1 to 3' });
    expect(results.controlMedian!.value).toBe(0);
    expect(results.minimumCorrect!.value).toBe(8);
    expect(flags).toEqual([]);
  });

  it('does not call a panel that saw no difference a proof of likeness', () => {
    const { notes, results } = run({ assessors: 12, correct: 4 });
    expect(notes.join(' ')).toContain('does not show that they are alike');
    expect(results.shareDiscriminating).toMatchObject({ value: 0, low: 0 });
    expect(results.shareDiscriminating!.high!).toBeGreaterThan(40);
  });

  it.each([
    ['fewer than six assessors', { intensities: [1, 2] }, 'too-few-assessors'],
    ['two triangles', { assessors: 2, correct: 2 }, 'too-few-assessors'],
    ['a wide range', { intensities: [0, 1, 1, 1, 1, 4] }, 'wide-range'],
    ['a control that smells', { intensities: [2, 2, 2, 2, 2, 2], controlIntensities: [1, 1, 1, 1, 1, 1] }, 'control-smells'],
  ])('flags %s', (_what, input, code) => {
    expect(run(input).flags.map((flag) => flag.code)).toContain(code);
  });

  it.each([
    ['nothing', {}, 'assessors'],
    ['more right than there were', { assessors: 6, correct: 7 }, 'correct'],
    ['assessors without answers', { assessors: 6 }, 'correct'],
    ['answers without assessors', { correct: 6, intensities: [1] }, 'assessors'],
    ['a grade off the scale', { intensities: [5] }, 'intensities[0]'],
    ['a grade between halves', { intensities: [1.3] }, 'intensities[0]'],
    ['half an assessor', { assessors: 6.5, correct: 2 }, 'assessors'],
    ['a control graded by fewer', { intensities: [1, 2], controlIntensities: [0] }, 'controlIntensities'],
  ])('refuses %s', (_what, input, field) => {
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

describe('blind servings', () => {
  it('follow from the seed, and stay as they are when assessors are added', () => {
    expect(triangleServings(7, 12)).toEqual(triangleServings(7, 12));
    expect(triangleServings(7, 30).slice(0, 12)).toEqual(triangleServings(7, 12));
    expect(triangleServings(8, 12)).not.toEqual(triangleServings(7, 12));
  });

  it('have each of the six orders once in six assessors, and each pair order twice in four', () => {
    for (const seed of [1, 2, 3, 99]) {
      const orders = triangleServings(seed, 12).map((serving) => serving.map(({ content }) => content[0]).join(''));
      expect(new Set(orders.slice(0, 6)).size).toBe(6);
      expect(new Set(orders.slice(6)).size).toBe(6);
      const pairs = pairServings(seed, 4).map((serving) => serving[0]!.content);
      expect(pairs.filter((content) => content === 'print')).toHaveLength(2);
    }
  });

  it('never use a code twice in a test, whatever the jar holds', () => {
    const codes = triangleServings(5, 200).flatMap((serving) => serving.map(({ code }) => code));
    expect(new Set(codes).size).toBe(600);
    expect(Math.min(...codes)).toBeGreaterThanOrEqual(100);
    expect(Math.max(...codes)).toBeLessThanOrEqual(999);
  });
});

describe('the sheet of the triangle test', () => {
  const servings = triangleServings(41, 6);
  const oddCode = (assessor: number) => {
    const serving = servings[assessor]!;
    return serving.find(({ content }) => serving.filter((jar) => jar.content === content).length === 1)!.code;
  };
  const otherCode = (assessor: number) => servings[assessor]!.find(({ code }) => code !== oddCode(assessor))!.code;
  const rows = (answers: (number | undefined)[]): Record<string, CellValue>[] => answers.map((odd, index) => ({ assessor: `A${index + 1}`, ...(odd === undefined ? {} : { odd }) }));
  const evaluate = (answers: (number | undefined)[], conditions: Record<string, CellValue> = {}) => odourTriangleMethod.evaluate(benchOf(odourTriangleMethod, rows(answers), { seed: 41, ...conditions }));
  const nobody = Array.from({ length: 6 }, () => undefined);

  it('shows the panel codes and nothing of what is in the jars', () => {
    const shown = JSON.stringify(evaluate(nobody));
    for (const serving of servings) for (const { code } of serving) expect(shown).toContain(String(code));
    expect(JSON.stringify(evaluate(nobody).tables)).not.toMatch(/print|control/);
  });

  it('shows the contents to whom fills the jars', () => {
    const { tables } = evaluate(nobody, { show: 'kitchen' });
    expect(tables![0]!.rows[2]).toMatchObject({ assessor: 'A3', jar1: `${servings[2]![0]!.code} ${servings[2]![0]!.content}` });
    expect(tables![0]!.title).toContain('not for the panel');
  });

  it('keeps the result back until all have answered', () => {
    const { results, notes, tables } = evaluate([oddCode(0), oddCode(1), undefined, undefined, undefined, undefined]);
    expect(results.pValue!.value).toBeNull();
    expect(results.correct!.value).toBeNull();
    expect(notes[0]).toContain('2 of 6');
    expect(tables).toHaveLength(1);
  });

  it('counts who found the odd one', () => {
    const { results, tables } = evaluate([oddCode(0), oddCode(1), oddCode(2), oddCode(3), oddCode(4), otherCode(5)]);
    expect(results.correct!.value).toBe(5);
    // P(X ≥ 5), n = 6: (6·2 + 1)/3⁶ = 13/729.
    expect(results.pValue!.value).toBeCloseTo(13 / 729, 12);
    expect(tables![1]!.rows[5]).toMatchObject({ assessor: 'A6', right: 'no' });
  });

  it('refuses a code of somebody else, and a seed that is not whole', () => {
    expect(() => evaluate([oddCode(1)])).toThrow(expect.objectContaining({ field: 'rows[0].odd' }));
    expect(() => evaluate([oddCode(0)], { seed: 4.5 })).toThrow(expect.objectContaining({ field: 'conditions.seed' }));
  });

  it('keeps the jars of the others when a row is voided', () => {
    const bench = benchOf(odourTriangleMethod, [{}, { assessor: 'A2', odd: oddCode(1) }], { seed: 41 });
    expect(odourTriangleMethod.evaluate(bench).results.correct!.value).toBe(1);
  });
});

describe('the sheet of the strength of a smell', () => {
  const servings = pairServings(9, 6);
  const rows = (grades: [number, number][]): Record<string, CellValue>[] =>
    grades.map(([print, control], index) => {
      const printFirst = servings[index]![0]!.content === 'print';
      return { assessor: `A${index + 1}`, first: printFirst ? print : control, second: printFirst ? control : print };
    });
  const evaluate = (sheet: Record<string, CellValue>[]) => odourIntensityMethod.evaluate(benchOf(odourIntensityMethod, sheet, { seed: 9 }));

  it('sorts the grades to print and control, whichever came first', () => {
    const { results, table } = evaluate(rows([[2, 0], [2.5, 0], [2, 0.5], [3, 0], [1.5, 0], [2, 0]]));
    expect(results.median).toMatchObject({ value: 2, low: 1.5, high: 3 });
    expect(results.controlMedian!.value).toBe(0);
    expect(table[2]).toMatchObject({ assessor: 'A3', intensity: 2, controlIntensity: 0.5 });
  });

  it('waits for both grades of all', () => {
    const { results, notes } = evaluate([...rows([[2, 0], [2, 0]]), { assessor: 'A3', first: 1 }]);
    expect(results.median!.value).toBeNull();
    expect(notes[0]).toContain('2 of 3');
  });

  it('refuses a grade between halves', () => {
    expect(() => evaluate([{ assessor: 'A1', first: 1.2, second: 0 }])).toThrow(expect.objectContaining({ field: 'rows[0].first' }));
  });
});
