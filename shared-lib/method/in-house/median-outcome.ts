import type { ResultValue } from '../../calculation/result.ts';
import { medianRank } from '../../statistics/median-interval.ts';
import type { ReadingColumn, ReadValue } from './reading-column.ts';

/**
 * The median and its exact interval, from one reading to another in their order. Where there are too few readings for one
 * (fewer than six at 95 %), a number has none; a grade, which is usually given a few times only, has its range instead,
 * said to be no more than that. Between grades there are no distances, so their interval counts as a stated range, without a
 * level to compute probabilities with; the note has it.
 */
export function medianOutcome({ read, kind, grades }: ReadingColumn, title: string, unit: string, level: number): { result: ResultValue; notes: string[] } {
  const n = read.length;
  // A reading that is 'or more' stands above an equal one that is exact.
  const sorted = [...read].sort((a, b) => a.value - b.value || Number(a.orMore) - Number(b.orMore));
  const [lower, upper] = [sorted[(n - 1) >> 1]!, sorted[n >> 1]!];
  const value = (lower.value + upper.value) / 2;
  const notes: string[] = [];
  const graded = kind === 'grade';
  if (graded) notes.push(meaningOf(lower, upper, grades, title));

  const found = medianRank(n, level);
  const rank = found?.rank ?? 1;
  const [low, high] = [sorted[rank - 1]!, sorted[n - rank]!];
  if (found) notes.push(`${title}: interval from reading ${rank} to reading ${n + 1 - rank} in their order, which holds the median in ${percent(found.coverage)} % of cases.`);
  else if (graded && n > 1) notes.push(`${title}: the range of ${n} grades, which holds the median in ${percent(1 - 2 ** (1 - n))} % of cases; an interval takes more of them.`);
  else notes.push(`${title}: no interval; ${n === 1 ? 'one reading shows no spread' : `${n} readings are too few to bracket a median at this level`}.`);

  const ends = found || (graded && n > 1) ? { low: low.value, high: high.orMore ? null : high.value } : { low: null, high: null };
  // Half of the readings lie at or above the median: a middle reading that is 'or more' bounds it from below.
  if (lower.orMore || upper.orMore) {
    return { result: { value, unit, low: value, high: null, level: null, n, bound: 'at-least' }, notes };
  }
  return { result: { value, unit, ...ends, level: found && !graded ? level : null, n, bound: 'exact' }, notes };
}

function meaningOf(lower: ReadValue, upper: ReadValue, grades: ReadingColumn['grades'], title: string): string {
  const meaning = (value: number) => grades.find(({ grade }) => grade === value)?.meaning ?? '';
  if (lower.value === upper.value) return `${title} ${lower.value}: ${meaning(lower.value).replace(/[.;]$/, '')}.`;
  return `${title} lies between ${lower.value} (${meaning(lower.value)}) and ${upper.value} (${meaning(upper.value)}).`;
}

function percent(share: number): string {
  return (100 * share).toFixed(1).replace(/\.0$/, '');
}
