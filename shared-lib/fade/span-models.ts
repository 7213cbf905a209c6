import type { ResultValue } from '../calculation/result.ts';

/**
 * The interval of a life widened to hold those of other models that the readings do not rule out, for which of them is
 * true matters as much as the scatter once the limit lies beyond the readings. The value stays that of the chosen model;
 * a life that is a bound, or has no interval, stays as it is.
 */
export function spanModels(life: ResultValue, others: readonly ResultValue[]): ResultValue {
  if (life.bound !== 'exact' || life.level === null) return life;
  const lows = others.map((other) => other.low ?? (other.bound === 'at-least' ? other.value : null));
  const highs = others.map((other) => other.high ?? (other.bound === 'at-most' ? other.value : null));
  return { ...life, low: least(life.low, lows), high: negated(least(negated(life.high), highs.map(negated))) };
}

/** `null` is an open end: open as soon as one is. */
function least(end: number | null, others: readonly (number | null)[]): number | null {
  return end === null || others.includes(null) ? null : Math.min(end, ...(others as number[]));
}

function negated(end: number | null): number | null {
  return end === null ? null : -end;
}
