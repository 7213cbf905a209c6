import type { ResultValue } from './result.ts';

/** A result times a factor above 0, in the unit that this gives. */
export function scaleResult(result: ResultValue, factor: number, unit: string): ResultValue {
  const scaled = (value: number | null) => (value === null ? null : value * factor);
  return { ...result, value: scaled(result.value), low: scaled(result.low), high: scaled(result.high), unit };
}
