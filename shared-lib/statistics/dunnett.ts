import { dunnettDistribution } from './dunnett-distribution.ts';
import { groupMoments, pooledVariance } from './group-moments.ts';
import { welchDegreesOfFreedom } from './pair-comparison.ts';
import type { PairComparison } from './pair-comparison.ts';

/**
 * Each group against the control, two-sided, with one common spread.
 * @param control place of the control in the list.
 * @returns a comparison per other group, in order, `b` being the control; p and interval `null` without spread within.
 * @throws RangeError for fewer than two groups, an empty group, a value that is not finite or a control that is not there.
 * Source: C. W. Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096; Biometrics 20 (1964) 482.
 */
export function dunnett(groups: readonly (readonly number[])[], control: number, level = 0.95): PairComparison[] {
  const moments = groupMoments(groups);
  const others = othersThan(control, groups.length);
  const { variance, degreesOfFreedom } = pooledVariance(moments);
  const base = moments[control]!;
  const distribution = dunnettDistribution(others.map((a) => Math.sqrt(moments[a]!.n / (moments[a]!.n + base.n))));
  const critical = variance ? distribution.upperQuantile(1 - level, degreesOfFreedom) : null;
  return others.map((a) => {
    const difference = moments[a]!.mean - base.mean;
    if (critical === null) return { a, b: control, difference, low: null, high: null, p: null };
    const error = Math.sqrt(variance! * (1 / moments[a]!.n + 1 / base.n));
    const reach = critical * error;
    return { a, b: control, difference, low: difference - reach, high: difference + reach, p: distribution.upperTail(Math.abs(difference) / error, degreesOfFreedom) };
  });
}

/**
 * Each group against the control, two-sided, each pair judged by its own spread: Dunnett's distribution with the
 * correlations that the spreads found give, and Welch's degrees of freedom for each difference.
 * @returns as `dunnett`; p and interval `null` where neither the group nor the control shows spread.
 * @throws RangeError as `dunnett`, also for a group with fewer than two values.
 * Source: M. Hasler, L. A. Hothorn, Biom. J. 50 (2008) 793.
 */
export function dunnettUnequalSpread(groups: readonly (readonly number[])[], control: number, level = 0.95): PairComparison[] {
  const moments = groupMoments(groups);
  const others = othersThan(control, groups.length);
  if (moments.some(({ n }) => n < 2)) throw new RangeError('A comparison with separate spreads needs at least two values in each group.');
  const base = moments[control]!;
  const baseError = base.variance! / base.n;
  const errors = others.map((a) => moments[a]!.variance! / moments[a]!.n);
  const distribution = dunnettDistribution(errors.map((error) => (baseError > 0 ? Math.sqrt(baseError / (baseError + error)) : 0)));
  const dfs = others.map((a, i) => welchDegreesOfFreedom(errors[i]!, moments[a]!.n - 1, baseError, base.n - 1));
  const critical = distribution.upperQuantiles(1 - level, dfs.map((df) => (df > 0 ? df : 1)));
  return others.map((a, i) => {
    const difference = moments[a]!.mean - base.mean;
    const error = Math.sqrt(errors[i]! + baseError);
    if (!(error > 0)) return { a, b: control, difference, low: null, high: null, p: null };
    const reach = error * critical[i]!;
    return { a, b: control, difference, low: difference - reach, high: difference + reach, p: distribution.upperTail(Math.abs(difference) / error, dfs[i]!) };
  });
}

function othersThan(control: number, count: number): number[] {
  if (!Number.isInteger(control) || control < 0 || control >= count) throw new RangeError(`The control must be one of the ${count} groups.`);
  return Array.from({ length: count }, (_, index) => index).filter((index) => index !== control);
}
