import type { ResultValue } from '../calculation/result.ts';
import { meanOf } from '../statistics/summarise.ts';
import { halfWidthOfSum } from './interval-of-sum.ts';
import { betweenSpecimens, type SolventAmount } from './solvent-amount.ts';

/**
 * All solvents together, mg/m².
 * - All found: the sum; its interval from the scatter of the specimens' own sums, so that solvents which rise and fall
 *   together count as such, and from the calibrations, which are independent.
 * - None found: at most the sum of their bounds.
 * - Some found: between the sum without and with the bounds of the others; interval ends where there are any.
 * @param solvents all with the same specimens in the same order
 */
export function solventTotal(solvents: readonly SolventAmount[], level: number): ResultValue {
  if (solvents.length === 1) return solvents[0]!.result;
  const n = solvents[0]!.specimens.length;
  const base = { unit: 'mg/m²', low: null, high: null, level: null, n };
  const sum = (of: (result: ResultValue) => number) => solvents.reduce((total, { result }) => total + of(result), 0);
  if (solvents.every(({ result }) => result.bound === 'at-most')) return { ...base, value: sum(({ value }) => value!), bound: 'at-most' };
  if (solvents.some(({ result }) => result.bound !== 'exact')) {
    const low = sum((result) => (result.bound === 'at-most' ? 0 : (result.low ?? result.value!)));
    const high = sum((result) => result.high ?? result.value!);
    return { ...base, value: (low + high) / 2, low, high, bound: 'between' };
  }
  const totals = totalPerSpecimen(solvents);
  const value = meanOf(totals);
  // With one specimen, a solvent without interval leaves the sum without one: its scatter is not known.
  if (n === 1 && solvents.some(({ variances }) => variances.length === 0)) return { ...base, value, bound: 'exact' };
  const reach = halfWidthOfSum([...solvents.flatMap(({ variances }) => variances), ...(n > 1 ? [betweenSpecimens(totals)] : [])], level);
  if (reach === null) return { ...base, value, bound: 'exact' };
  return { ...base, value, low: Math.max(0, value - reach), high: value + reach, level, bound: 'exact' };
}

/** mg/m² of all solvents in each specimen; those not found count with the bound that they are at most. */
export function totalPerSpecimen(solvents: readonly SolventAmount[]): number[] {
  return solvents[0]!.specimens.map((_, index) => solvents.reduce((total, { specimens }) => total + specimens[index]!.perSquareMetre, 0));
}
