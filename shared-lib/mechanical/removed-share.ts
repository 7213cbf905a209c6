import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { chiSquareUpperTail } from '../statistics/distributions.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';

/** Fields that say how much of the print came off one specimen. */
export const removedFields = {
  removedPct: z.number().min(0).max(100).optional(),
  /** 95 % interval of the percent of this one specimen, where its picture was measured. */
  removedLowPct: z.number().min(0).max(100).optional(),
  removedHighPct: z.number().min(0).max(100).optional(),
  squares: z.strictObject({ total: z.int().min(1).max(10_000), removed: z.int().min(0) }).optional(),
};

export interface Removed {
  removedPct?: number | undefined;
  removedLowPct?: number | undefined;
  removedHighPct?: number | undefined;
  squares?: { total: number; removed: number } | undefined;
}

/**
 * Percent of the area that came off one specimen.
 * @param field where a problem is put down to, '' or 'specimens[2].'
 * @throws InputError for both forms, neither, more squares removed than there were, or an interval that does not hold the percent
 */
export function removedPctOf({ removedPct, removedLowPct, removedHighPct, squares }: Removed, field: string): number {
  if (removedPct !== undefined && squares !== undefined) {
    throw new InputError(`${field}removedPct`, removedPct, 'Give either the percent removed or the squares counted, not both.');
  }
  if (squares === undefined) {
    if (removedPct === undefined) throw new InputError(`${field}removedPct`, null, 'Say how much came off: in percent, or as squares counted.');
    if (removedLowPct !== undefined && removedLowPct > removedPct) throw new InputError(`${field}removedLowPct`, removedLowPct, `removedLowPct (${removedLowPct}) must not lie above the percent removed (${removedPct}).`);
    if (removedHighPct !== undefined && removedHighPct < removedPct) throw new InputError(`${field}removedHighPct`, removedHighPct, `removedHighPct (${removedHighPct}) must not lie below the percent removed (${removedPct}).`);
    return removedPct;
  }
  if (squares.removed > squares.total) {
    throw new InputError(`${field}squares.removed`, squares.removed, `Of ${squares.total} squares no more than ${squares.total} can have come off, not ${squares.removed}.`);
  }
  return (100 * squares.removed) / squares.total;
}

/** Specimens that differ more than this chance explains do not share one proportion; low, for few squares make chi-square rash. */
const UNEVEN_P = 0.01;

/**
 * Percent removed over all specimens. Squares counted on every specimen: their share with the exact interval, as long as the
 * specimens differ no more than counts do by chance. Else, and for percents: mean of the specimens with its t interval, kept
 * within 0 to 100 and no narrower than the pictures were read, whose errors specimens have in common.
 * @returns `uneven`: the counts of the specimens differ more than by chance
 */
export function removedShare(specimens: readonly Removed[], percents: readonly number[], level: number): { removed: ResultValue; uneven: boolean; counted: boolean } {
  const counts = specimens.flatMap(({ squares }) => (squares ? [squares] : []));
  const counted = counts.length === specimens.length;
  const uneven = counted && isUneven(counts);
  if (!counted || uneven) {
    const mean = meanOfReplicates([...percents], '%', level, 0);
    const { low, high } = withPictures(mean, specimens, percents);
    return { removed: { ...mean, low, high: high === null ? null : Math.min(100, high), level: low === null ? mean.level : level }, uneven, counted };
  }
  const total = counts.reduce((sum, count) => sum + count.total, 0);
  const removed = counts.reduce((sum, count) => sum + count.removed, 0);
  const { low, high } = clopperPearson(removed, total, level);
  return { removed: { value: (100 * removed) / total, unit: '%', low: 100 * low, high: 100 * high, level, n: total, bound: 'exact' }, uneven, counted };
}

function withPictures(mean: ResultValue, specimens: readonly Removed[], percents: readonly number[]): { low: number | null; high: number | null } {
  if (specimens.every(({ removedLowPct }) => removedLowPct === undefined)) return mean;
  const meanOf = (ends: number[]) => ends.reduce((sum, end) => sum + end, 0) / ends.length;
  const low = meanOf(specimens.map(({ removedLowPct }, index) => removedLowPct ?? percents[index]!));
  const high = meanOf(specimens.map(({ removedHighPct }, index) => removedHighPct ?? percents[index]!));
  return { low: Math.min(low, mean.low ?? low), high: Math.max(high, mean.high ?? high) };
}

/** Pearson's test of one share for all. */
function isUneven(counts: readonly { total: number; removed: number }[]): boolean {
  const share = counts.reduce((sum, { removed }) => sum + removed, 0) / counts.reduce((sum, { total }) => sum + total, 0);
  if (counts.length < 2 || share === 0 || share === 1) return false;
  const statistic = counts.reduce((sum, { total, removed }) => sum + (removed - total * share) ** 2 / (total * share * (1 - share)), 0);
  return chiSquareUpperTail(statistic, counts.length - 1) < UNEVEN_P;
}
