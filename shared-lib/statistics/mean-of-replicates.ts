import type { ResultValue } from '../calculation/result.ts';
import { summarise } from './summarise.ts';

/**
 * Mean of replicate values with its t interval; no interval for a single value.
 * @param floor value that the quantity cannot fall below (0 for a colour difference); the interval stops there.
 */
export function meanOfReplicates(values: number[], unit: string, level: number, floor = -Infinity): ResultValue {
  const { n, mean, low, high } = summarise(values, level);
  if (low === null || high === null) return { value: mean, unit, low: null, high: null, level: null, n, bound: 'exact' };
  return { value: mean, unit, low: Math.max(floor, low), high, level, n, bound: 'exact' };
}
