import type { ResultValue } from '../calculation/result.ts';

/** A number that follows from its inputs alone, which carry no uncertainty. */
export function statedValue(value: number, unit: string): ResultValue {
  return { value, unit, low: null, high: null, level: null, n: 1, bound: 'exact' };
}
