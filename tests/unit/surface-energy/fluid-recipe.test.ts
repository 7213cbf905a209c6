import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { fluidRecipeCalculation } from '../../../shared-lib/surface-energy/fluid-recipe.calculation.ts';
import { refusal } from './refusal.ts';

const run = (input: unknown) => runCalculation(fluidRecipeCalculation, input);

describe('fluid recipe', () => {
  it('takes a fluid of the table as it stands', () => {
    const { results, flags, cautions } = run({ targetMNm: 38, batchMl: 200 });
    expect(results).toMatchObject({ formamideMl: { value: 108 }, ethoxyethanolMl: { value: 92 }, formamidePct: { value: 54 } });
    expect(flags).toEqual([]);
    expect(cautions.join(' ')).toContain('toxic to reproduction');
  });

  it.each([[30, 0], [56, 99]])('knows the ends of the table: %s mN/m', (targetMNm, pct) => {
    expect(run({ targetMNm, batchMl: 100 }).results.formamidePct!.value).toBe(pct);
  });

  it('interpolates between neighbours only with a flag and a note', () => {
    const { results, flags, notes } = run({ targetMNm: 47, batchMl: 100 });
    expect(results.formamidePct!.value).toBeCloseTo(85, 9);
    expect(flags.map((flag) => flag.code)).toEqual(['interpolated']);
    expect(notes.join(' ')).toContain('between 46 and 48');
  });

  it('fills the batch', () => {
    const { results } = run({ targetMNm: 41.3, batchMl: 250 });
    expect(results.formamideMl!.value! + results.ethoxyethanolMl!.value!).toBeCloseTo(250, 9);
  });

  it.each([
    [{ targetMNm: 29.9, batchMl: 100 }, 'targetMNm'],
    [{ targetMNm: 57, batchMl: 100 }, 'targetMNm'],
    [{ targetMNm: 38, batchMl: 0 }, 'batchMl'],
    [{ targetMNm: '38', batchMl: 100 }, 'targetMNm'],
  ])('refuses %j', (input, field) => {
    expect(refusal(() => run(input)).field).toBe(field);
  });
});
