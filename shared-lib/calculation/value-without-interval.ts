import type { ResultValue } from './result.ts';

/** A result that no interval can be given for; `null` where the value itself cannot be given. */
export function valueWithoutInterval(value: number | null, unit: string, n: number): ResultValue {
  return { value, unit, low: null, high: null, level: null, n, bound: 'exact' };
}
