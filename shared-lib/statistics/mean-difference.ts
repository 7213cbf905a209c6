import { groupMoments, pooledVariance } from './group-moments.ts';
import { welchDegreesOfFreedom } from './pair-comparison.ts';
import { summarise } from './summarise.ts';

/** A difference of means (first minus second) with what its t tests and intervals need. */
export interface MeanDifference {
  difference: number;
  standardError: number;
  degreesOfFreedom: number;
}

/** `welch`: separate spreads; `pooled`: one common spread; `paired`: value by value. */
export type TwoSampleDesign = 'welch' | 'pooled' | 'paired';

/**
 * Difference of two means by the design given.
 * @returns `null` where the readings show no spread to judge the difference by, or are too few.
 * @throws RangeError for an empty list, a value that is not finite, or pairs that do not match.
 * Source: B. L. Welch, Biometrika 34 (1947) 28; Student, Biometrika 6 (1908) 1.
 */
export function meanDifference(a: readonly number[], b: readonly number[], design: TwoSampleDesign): MeanDifference | null {
  if (design === 'paired') {
    if (a.length !== b.length) throw new RangeError(`Pairs need as many values in a as in b: ${a.length} and ${b.length}.`);
    const { mean, standardError, n } = summarise(a.map((value, i) => value - b[i]!));
    return standardError ? { difference: mean, standardError, degreesOfFreedom: n - 1 } : null;
  }
  const moments = groupMoments([a, b]);
  const [first, second] = [moments[0]!, moments[1]!];
  const difference = first.mean - second.mean;
  if (design === 'pooled') {
    const { variance, degreesOfFreedom } = pooledVariance(moments);
    return variance ? { difference, standardError: Math.sqrt(variance * (1 / first.n + 1 / second.n)), degreesOfFreedom } : null;
  }
  if (first.variance === null || second.variance === null || !(first.variance + second.variance > 0)) return null;
  const [u, v] = [first.variance / first.n, second.variance / second.n];
  return { difference, standardError: Math.sqrt(u + v), degreesOfFreedom: welchDegreesOfFreedom(u, first.n - 1, v, second.n - 1) };
}
