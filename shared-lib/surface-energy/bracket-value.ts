import type { ResultValue } from '../calculation/result.ts';
import type { Bracket } from './bracket.ts';

/** A bracket as a result: between its ends, at least or at most the one that is known, or nothing. */
export function bracketValue({ low, high }: Bracket, unit: string, n: number): ResultValue {
  const common = { unit, low, high, level: null, n };
  if (low !== null && high !== null) return { ...common, value: (low + high) / 2, bound: 'between' };
  if (low !== null) return { ...common, value: low, bound: 'at-least' };
  if (high !== null) return { ...common, value: high, bound: 'at-most' };
  return { ...common, value: null, bound: 'between' };
}
