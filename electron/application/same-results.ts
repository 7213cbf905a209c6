import type { ResultValue } from '../../shared-lib/calculation/result.ts';

const NUMBERS = ['value', 'low', 'high', 'level'] as const;

/**
 * Whether two results are the same to nine digits. The last digits of a logarithm differ between processors; a result
 * worked out anew on another machine is still the same result.
 */
export function sameResults(a: Record<string, ResultValue>, b: Record<string, ResultValue>): boolean {
  return differingResults(a, b).length === 0;
}

/** Names of the results that differ or that only one side has. */
export function differingResults(a: Record<string, ResultValue>, b: Record<string, ResultValue>): string[] {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return names.filter((name) => !a[name] || !b[name] || !sameValue(a[name], b[name]));
}

function sameValue(a: ResultValue, b: ResultValue): boolean {
  if (a.unit !== b.unit || a.bound !== b.bound || a.n !== b.n || a.text !== b.text) return false;
  return NUMBERS.every((part) => sameNumber(a[part], b[part]));
}

function sameNumber(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a === b;
  return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}
