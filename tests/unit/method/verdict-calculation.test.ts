import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { verdictCalculation } from '../../../shared-lib/method/verdict.calculation.ts';

const good = { value: 39.2, low: 38.4, high: 40, lowerLimit: 38, rule: 'guarded' };

describe('verdict', () => {
  it('gives the word, its code, the probability and the reason', () => {
    const { results, table, notes } = runCalculation(verdictCalculation, good);
    expect(results.verdict).toMatchObject({ value: 1, text: 'meets' });
    expect(results.probability!.value).toBeGreaterThan(0.975);
    expect(table[0]).toMatchObject({ verdict: 'meets', lowerLimit: 38, upperLimit: null });
    expect(notes[0]).toMatch(/^Meets/);
    expect(notes[1]).toContain('normal');
  });

  it('codes falls short as 0 and undecided as null', () => {
    const short = runCalculation(verdictCalculation, { ...good, lowerLimit: 41 }).results.verdict;
    expect(short).toMatchObject({ value: 0, text: 'falls short' });
    const open = runCalculation(verdictCalculation, { ...good, lowerLimit: 39 }).results.verdict;
    expect(open).toMatchObject({ value: null, text: 'undecided' });
  });

  it('names the t distribution when n is given and says when there is no probability', () => {
    expect(runCalculation(verdictCalculation, { ...good, n: 6 }).notes[1]).toContain('5 degrees of freedom');
    const bare = runCalculation(verdictCalculation, { value: 39.2, lowerLimit: 38, rule: 'simple' });
    expect(bare.results.verdict!.text).toBe('meets');
    expect(bare.results.probability!.value).toBeNull();
    expect(bare.notes[1]).toMatch(/^No probability/);
  });

  it('takes a bound', () => {
    const { results } = runCalculation(verdictCalculation, { value: 3.1, low: null, high: null, lowerLimit: 3, rule: 'guarded', bound: 'at-least' });
    expect(results.verdict!.text).toBe('meets');
  });

  it.each([
    ['no limit at all', { value: 1, low: 0, high: 2, rule: 'simple' }, 'lowerLimit'],
    ['crossed limits', { ...good, upperLimit: 37 }, 'lowerLimit'],
    ['a crossed interval', { ...good, value: null, low: 41 }, 'low'],
    ['a value below its interval', { ...good, value: 38.3 }, 'low'],
    ['a value above its interval', { ...good, value: 41 }, 'high'],
    ['an unknown rule', { ...good, rule: 'strict' }, 'rule'],
    ['no rule', { value: 1, lowerLimit: 0 }, 'rule'],
    ['no value', { low: 0, high: 1, lowerLimit: 0, rule: 'simple' }, 'value'],
    ['a level of 1', { ...good, level: 1 }, 'level'],
    ['a level in percent', { ...good, level: 95 }, 'level'],
    ['half a reading', { ...good, n: 2.5 }, 'n'],
    ['no reading', { ...good, n: 0 }, 'n'],
    ['infinity', { ...good, high: Infinity }, 'high'],
    ['text', { ...good, value: '39' }, 'value'],
    ['an unknown field', { ...good, limit: 38 }, ''],
    ['an unknown bound', { ...good, bound: 'about' }, 'bound'],
  ])('refuses %s', (_what, input, field) => {
    const run = () => runCalculation(verdictCalculation, input);
    expect(run).toThrow(InputError);
    expect(run).toThrow(expect.objectContaining({ field }));
  });
});
