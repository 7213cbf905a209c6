import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { defineCalculation, runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { allCalculations } from '../../../shared-lib/registry/calculations.ts';

/** Gives back one over the number that it is given. */
const inverse = defineCalculation({
  id: 'inverse',
  version: '1',
  title: 'Inverse',
  input: z.strictObject({ x: z.number(), held: z.boolean().default(false), grade: z.number().multipleOf(0.5).optional(), list: z.array(z.number()).optional() }),
  compute: ({ x }) => ({ results: { y: { value: 1 / x, unit: '', low: null, high: null, level: null, n: 1, bound: 'exact' } } }),
  columns: [],
  cautions: [],
  sources: [],
});

function refusal(calculation: Parameters<typeof runCalculation>[0], input: unknown): InputError {
  try {
    runCalculation(calculation, input);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('was not refused');
}

describe('a refusal', () => {
  it.each([
    ['a number too large', { x: 1e31 }, 'x', 'x is too large to compute with (1e+31); check its power of ten and its unit.'],
    ['one too small, in a list', { x: 1, list: [1, -1e-101] }, 'list[1]', 'list[1] is too small to compute with (-1e-101); check its power of ten and its unit.'],
    ['one beyond all numbers', JSON.parse('{ "x": 1e999 }'), 'x', 'x is too large to compute with; check its power of ten and its unit.'],
    ['a step that the scale has not', { x: 1, grade: 4.4 }, 'grade', 'grade must be a multiple of 0.5, not 4.4.'],
    ['a word for yes or no', { x: 1, held: 'yes' }, 'held', 'held must be yes or no (true or false), not "yes".'],
    ['nothing for a number', {}, 'x', 'x is missing; it must be a number.'],
    ['a result that is no number', { x: 0 }, 'results.y.value', 'These readings lead to a number that is too large to be given; check them and their units.'],
  ])('of %s is a sentence', (_, input, field, message) => {
    expect(refusal(inverse, input).toProblem()).toMatchObject({ field, message });
  });

  it('takes zero and the ends of what can be computed with', () => {
    for (const x of [1e30, -1e30, 1e-100]) expect(runCalculation(inverse, { x, list: [0] }).results.y!.value).toBe(1 / x);
  });
});

describe.each(allCalculations.map((calculation) => [calculation.id, calculation] as const))('%s', (_, calculation) => {
  it.each([[{}], [null], [[]], ['38.5'], [38.5], [true], [undefined]])('refuses %j in a sentence', (input) => {
    expect(refusal(calculation, input).message).toMatch(/^[^<>]+[.]$/u);
    expect(refusal(calculation, input).message).not.toMatch(/undefined|NaN|boolean|\[object|Invalid|expected/u);
  });
});
