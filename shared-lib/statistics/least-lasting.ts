import type { ResultValue } from '../calculation/result.ts';

/** How far one specimen got: to its end, or (`ended: false`) only watched that far and still whole. */
export interface Lasting {
  value: number;
  ended: boolean;
}

/**
 * The specimen that lasted least, as read. One that was stopped first leaves it open how far it would have got, up to the
 * first that ended.
 * @param readings at least one
 */
export function leastLasting(readings: readonly Lasting[], unit: string): ResultValue {
  const n = readings.length;
  const least = (some: readonly Lasting[]) => Math.min(...some.map(({ value }) => value));
  const smallest = least(readings);
  const firstEnded = least(readings.filter(({ ended }) => ended));
  if (firstEnded === smallest) return { value: smallest, unit, low: null, high: null, level: null, n, bound: 'exact' };
  if (firstEnded === Infinity) return { value: smallest, unit, low: smallest, high: null, level: null, n, bound: 'at-least' };
  return { value: (smallest + firstEnded) / 2, unit, low: smallest, high: firstEnded, level: null, n, bound: 'between' };
}
