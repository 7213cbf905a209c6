import type { ResultValue } from '../calculation/result.ts';
import { scaleResult } from '../calculation/scale-result.ts';

export interface LimitedSolvent {
  result: ResultValue;
  limitMgM2: number;
}

/**
 * The largest share, in percent, that any solvent takes of its own limit. The true one lies at least at the highest of the
 * lower ends and at most at the highest of the upper ends; a solvent that was not found counts from 0 to its bound.
 * `null` where no solvent has a limit.
 */
export function shareOfLimit(solvents: readonly LimitedSolvent[]): ResultValue | null {
  if (solvents.length === 0) return null;
  const shares = solvents.map(({ result, limitMgM2 }) => scaleResult(result, 100 / limitMgM2, '%'));
  if (shares.length === 1) return shares[0]!;
  const base = { unit: '%', level: null, n: Math.min(...shares.map(({ n }) => n)), low: null, high: null };
  const highest = (of: (share: ResultValue) => number) => Math.max(...shares.map(of));
  const value = highest((share) => share.value!);
  if (shares.every(({ bound }) => bound === 'at-most')) return { ...base, value, bound: 'at-most' };
  const low = highest((share) => (share.bound === 'at-most' ? 0 : (share.low ?? share.value!)));
  const high = highest((share) => share.high ?? share.value!);
  const leads = shares.find((share) => share.value === value)!;
  if (leads.bound !== 'exact') return { ...base, value: (low + high) / 2, low, high, bound: 'between' };
  return { ...base, value, bound: 'exact', ...(leads.level === null ? {} : { low, high, level: leads.level }) };
}
