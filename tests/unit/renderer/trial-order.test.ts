import { describe, expect, it } from 'vitest';
import { nextSort, overall, sortDirection, sortTrials } from '../../../renderer/state/trial-order.ts';
import type { ResponseView, TrialRow } from '../../../shared-lib/notebook/trial-views.ts';

const response = (goal: ResponseView['goal'], target: number | null = null) => ({ key: 'k', goal, target }) as ResponseView;
const trial = (name: string, value: number | null, desirability: number | null = null) =>
  ({ name, desirability, cells: value === undefined ? {} : { k: { value } } }) as unknown as TrialRow;
const names = (trials: TrialRow[]) => trials.map(({ name }) => name).join('');

describe('the order of the trials', () => {
  const trials = [trial('A', 36, 0.2), trial('B', 41, null), trial('C', null, 0.9), trial('D', 38.5, 0.2)];

  it('stays as entered without a sort', () => {
    expect(names(sortTrials(trials, [response('higher')], null))).toBe('ABCD');
  });

  it.each([
    ['higher', null, 'BDAC', 'ADBC'],
    ['lower', null, 'ADBC', 'BDAC'],
    // 38 is 0.5 from D, 2 from A, 3 from B.
    ['target', 38, 'DABC', 'BADC'],
  ] as const)('with goal %s and target %s is %s, reversed %s, those without a value last', (goal, target, first, last) => {
    const responses = [response(goal, target)];
    expect(names(sortTrials(trials, responses, { key: 'k', best: 'first' }))).toBe(first);
    expect(names(sortTrials(trials, responses, { key: 'k', best: 'last' }))).toBe(last);
  });

  it('goes by the overall desirability, equals as entered', () => {
    expect(names(sortTrials(trials, [], { key: overall, best: 'first' }))).toBe('CADB');
  });

  it('leaves the list that was given as it is', () => {
    sortTrials(trials, [response('higher')], { key: 'k', best: 'first' });
    expect(names(trials)).toBe('ABCD');
  });
});

describe('the head of a column', () => {
  it('goes from best first over best last to as entered', () => {
    const first = nextSort(null, 'k');
    expect(first).toEqual({ key: 'k', best: 'first' });
    const last = nextSort(first, 'k');
    expect(last).toEqual({ key: 'k', best: 'last' });
    expect(nextSort(last, 'k')).toBe(null);
    expect(nextSort(last, 'other')).toEqual({ key: 'other', best: 'first' });
  });

  it('says in which direction the numbers run', () => {
    const sort = { key: 'k', best: 'first' } as const;
    expect(sortDirection(sort, 'k', response('higher'))).toBe('descending');
    expect(sortDirection(sort, 'k', response('lower'))).toBe('ascending');
    expect(sortDirection(sort, 'k', response('target', 38))).toBe('other');
    expect(sortDirection({ key: overall, best: 'last' }, overall, undefined)).toBe('ascending');
    expect(sortDirection(sort, 'other', response('higher'))).toBe(undefined);
  });
});
