import type { ResponseView, TrialRow } from '../../shared-lib/notebook/trial-views.ts';

/** Which column the trials are sorted by; `null` leaves them as they were entered. */
export type TrialSort = { key: string; best: 'first' | 'last' } | null;

/** Key of the column of the overall desirability. */
export const overall = 'desirability';

/** What pressing the head of a column makes of the order: best first, then best last, then as entered. */
export function nextSort(sort: TrialSort, key: string): TrialSort {
  if (sort?.key !== key) return { key, best: 'first' };
  return sort.best === 'first' ? { key, best: 'last' } : null;
}

/** For `aria-sort`: the direction in which the numbers run, `other` where nearness to a target counts. */
export function sortDirection(sort: TrialSort, key: string, response: ResponseView | undefined): 'ascending' | 'descending' | 'other' | undefined {
  if (sort?.key !== key) return undefined;
  if (response?.goal === 'target') return 'other';
  const falling = response?.goal !== 'lower';
  return falling === (sort.best === 'first') ? 'descending' : 'ascending';
}

/** The trials in that order; those without a value come last either way, equals stay as entered. */
export function sortTrials(trials: TrialRow[], responses: ResponseView[], sort: TrialSort): TrialRow[] {
  if (!sort) return trials;
  const response = responses.find(({ key }) => key === sort.key);
  const sign = sort.best === 'first' ? -1 : 1;
  return trials
    .map((trial) => ({ trial, merit: sort.key === overall ? trial.desirability : meritOf(trial, response) }))
    .sort((a, b) => {
      if (a.merit === null || b.merit === null) return Number(a.merit === null) - Number(b.merit === null);
      return sign * (a.merit - b.merit);
    })
    .map(({ trial }) => trial);
}

/** The larger the better. */
function meritOf(trial: TrialRow, response: ResponseView | undefined): number | null {
  const value = response && trial.cells[response.key]?.value;
  if (value == null) return null;
  if (response!.goal === 'lower') return -value;
  if (response!.goal === 'target' && response!.target !== null) return -Math.abs(value - response!.target);
  return value;
}
