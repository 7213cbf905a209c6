import { describe, expect, it } from 'vitest';
import { surfaceTackMethod } from '../../../shared-lib/cure/surface-tack.method.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (rows: Parameters<typeof bench>[0]) => surfaceTackMethod.evaluate(bench(rows));

describe('surface tack', () => {
  it('median grade, the worse of two, with its range', () => {
    const { results, notes } = run([{ grade: '0' }, {}, { grade: '1' }]);
    expect(results.grade).toMatchObject({ value: 1, low: 0, high: 1, n: 2 });
    expect(results.worstGrade!.value).toBe(1);
    expect(results.tackFree).toMatchObject({ value: null, n: 0 });
    expect(notes.at(-1)).toContain('neither depth of cure nor conversion');
  });

  it('looks in one gap give the gap, looks in several an estimate', () => {
    // Two specimens with the same looks: the bracket itself.
    expect(run([{ tackyAtMin: 10, freeAtMin: 20 }, { tackyAtMin: 10, freeAtMin: 20 }]).results.tackFree).toMatchObject({ low: 10, high: 20, bound: 'between' });
    const { tackFree } = run([{ tackyAtMin: 5, freeAtMin: 10 }, { tackyAtMin: 10, freeAtMin: 20 }, { tackyAtMin: 20, freeAtMin: 30 }, { tackyAtMin: 10, freeAtMin: 20 }]).results;
    expect(tackFree!.bound).toBe('exact');
    expect(tackFree!.value!).toBeGreaterThan(10);
    expect(tackFree!.value!).toBeLessThan(20);
  });

  it('still tacky at the last look is a lower bound and flagged; free at the first look an upper one', () => {
    const { results, flags } = run([{}, { tackyAtMin: 60 }]);
    expect(results.tackFree).toMatchObject({ value: 60, bound: 'at-least' });
    expect(flags.map(({ code, where }) => [code, where])).toEqual([['still-tacky', 'rows[1].tackyAtMin']]);
    expect(run([{ freeAtMin: 5 }]).results.tackFree).toMatchObject({ low: 0, high: 5, bound: 'between' });
  });

  it('refuses free before tacky, another grade and nothing at all, and names the cell', () => {
    expect(refusal(() => run([{}, { tackyAtMin: 20, freeAtMin: 20 }])).field).toBe('rows[1].freeAtMin');
    expect(refusal(() => run([{ grade: '7' }])).field).toBe('rows[0].grade');
    expect(refusal(() => run([{}])).field).toBe('rows[0].grade');
  });
});
