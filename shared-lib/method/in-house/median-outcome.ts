import type { ResultValue } from '../../calculation/result.ts';
import { formatNumber, plainDecimals } from '../../quantity/format.ts';
import { medianRank } from '../../statistics/median-interval.ts';
import type { ReadingColumn } from './reading-column.ts';

/**
 * The median and its exact interval, from one reading to another in their order. Where there are too few readings for one
 * (fewer than six at 95 %), a number has none; a grade, which is usually given a few times only, has its range instead,
 * said to be no more than that. Between grades there are no distances, so their interval counts as a stated range, without a
 * level to compute probabilities with; the note has it.
 * Readings that are 'or more' may stand anywhere above their value, also above the middle: the median lies between that of
 * the values as read and that with all of them beyond every other.
 */
export function medianOutcome({ read, kind, grades }: ReadingColumn, title: string, unit: string, level: number): { result: ResultValue; notes: string[] } {
  const n = read.length;
  const lows = read.map(({ value }) => value).sort((a, b) => a - b);
  const highs = read.map(({ value, orMore }) => (orMore ? Infinity : value)).sort((a, b) => a - b);
  const [least, most] = [middleOf(lows), middleOf(highs)];
  const notes: string[] = [];
  const graded = kind === 'grade';
  if (graded) notes.push(meaningOf(lows[(n - 1) >> 1]!, lows[n >> 1]!, grades, title));

  const found = medianRank(n, level);
  const rank = found?.rank ?? 1;
  const [low, high] = [lows[rank - 1]!, finite(highs[n - rank]!)];
  if (most > least) notes.push(`${title}: readings that are ‘or more’ may lie on either side of the middle; the median of these ${n} is ${most === Infinity ? `at least ${said(least)}` : `between ${said(least)} and ${said(most)}`}.`);
  if (found) notes.push(`${title}: interval from reading ${rank} to reading ${n + 1 - rank} in their order, which holds the median in ${percent(found.coverage)} % of cases.`);
  if (most === Infinity) return { result: { value: least, unit, low: found ? low : least, high: null, level: found ? level : null, n, bound: 'at-least' }, notes };
  if (most > least) return { result: { value: (least + most) / 2, unit, low: found ? low : least, high: found ? high : most, level: null, n, bound: 'between' }, notes };

  if (found) return { result: { value: least, unit, low, high, level: graded ? null : level, n, bound: 'exact' }, notes };
  if (graded && n > 1) {
    notes.push(`${title}: the range of ${n} grades, which holds the median in ${percent(1 - 2 ** (1 - n))} % of cases; an interval takes more of them.`);
    return { result: { value: least, unit, low, high, level: null, n, bound: 'exact' }, notes };
  }
  notes.push(`${title}: no interval; ${n === 1 ? 'one reading shows no spread' : `${n} readings are too few to bracket a median at this level`}.`);
  return { result: { value: least, unit, low: null, high: null, level: null, n, bound: 'exact' }, notes };
}

function finite(end: number): number | null {
  return end === Infinity ? null : end;
}

function middleOf(sorted: readonly number[]): number {
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}

function meaningOf(lower: number, upper: number, grades: ReadingColumn['grades'], title: string): string {
  const meaning = (value: number) => grades.find(({ grade }) => grade === value)?.meaning ?? '';
  if (lower === upper) return `${title} ${lower}: ${meaning(lower).replace(/[.;]$/, '')}.`;
  return `${title} lies between ${lower} (${meaning(lower)}) and ${upper} (${meaning(upper)}).`;
}

function said(value: number): string {
  return formatNumber(value, plainDecimals(value));
}

function percent(share: number): string {
  return (100 * share).toFixed(1).replace(/\.0$/, '');
}
