import type { ResultValue } from '../calculation/result.ts';
import { summarise } from '../statistics/summarise.ts';

/**
 * One exposure-to-limit for replicate patches: their geometric mean, for exposures scatter in proportion, with the t
 * interval of the logarithms. With patches that are only bounded on one side the mean is bounded on that side; bounded
 * on both sides, or with one patch unknown, nothing can be said (`value: null`). A single patch keeps its own interval.
 */
export function combineLives(lives: readonly ResultValue[], level: number): ResultValue {
  if (lives.length === 1) return lives[0]!;
  const unit = lives[0]!.unit;
  const open = { unit, low: null, high: null, level: null, n: lives.length };
  const bounds = new Set(lives.map(({ bound }) => bound));
  const unknown = lives.some(({ value }) => value === null);
  if (unknown || (bounds.has('at-least') && bounds.has('at-most'))) return { ...open, value: null, bound: 'exact' };
  const logarithms = summarise(lives.map(({ value }) => Math.log(value!)), level);
  const value = Math.exp(logarithms.mean);
  if (bounds.has('at-least')) return { ...open, value, bound: 'at-least' };
  if (bounds.has('at-most')) return { ...open, value, bound: 'at-most' };
  return { ...open, value, low: Math.exp(logarithms.low!), high: Math.exp(logarithms.high!), level, bound: 'exact' };
}
