import { compensatedSum, meanOf, squaresAbout } from './summarise.ts';

export interface GroupMoments {
  n: number;
  mean: number;
  /** Sum of squares about the group's mean. */
  squares: number;
  /** With n − 1; `null` for one value. */
  variance: number | null;
}

/**
 * Counts, means and spreads of several groups of readings.
 * @throws RangeError for fewer than two groups, an empty group or a value that is not finite.
 */
export function groupMoments(groups: readonly (readonly number[])[]): GroupMoments[] {
  if (groups.length < 2) throw new RangeError(`A comparison needs at least two groups, not ${groups.length}.`);
  return groups.map((values, index) => {
    if (values.length === 0) throw new RangeError(`Group ${index + 1} has no values.`);
    if (!values.every(Number.isFinite)) throw new RangeError(`Group ${index + 1} has a value that is not a finite number.`);
    const n = values.length;
    const mean = meanOf(values);
    const squares = values.every((value) => value === values[0]) ? 0 : squaresAbout(values, mean);
    return { n, mean, squares, variance: n > 1 ? squares / (n - 1) : null };
  });
}

/** Spread within the groups taken together; variance `null` where no group has two values. */
export function pooledVariance(moments: readonly GroupMoments[]): { variance: number | null; degreesOfFreedom: number } {
  const degreesOfFreedom = moments.reduce((sum, { n }) => sum + n - 1, 0);
  const squares = compensatedSum(moments.map((group) => group.squares));
  return { variance: degreesOfFreedom > 0 ? squares / degreesOfFreedom : null, degreesOfFreedom };
}
