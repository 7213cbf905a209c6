import { chiSquareUpperTail } from './distributions.ts';
import { groupMoments, pooledVariance } from './group-moments.ts';
import { compensatedSum } from './summarise.ts';

export interface SpreadTest {
  statistic: number;
  p: number;
}

/**
 * Do the groups have one spread? Bartlett's test: sharp for normal readings, misled by others.
 * @returns `null` where a group has one value or no spread.
 * Source: M. S. Bartlett, Proc. R. Soc. A 160 (1937) 268.
 */
export function bartlettTest(groups: readonly (readonly number[])[]): SpreadTest | null {
  const moments = groupMoments(groups);
  if (moments.some(({ variance }) => !variance)) return null;
  const { variance, degreesOfFreedom } = pooledVariance(moments);
  const k = moments.length;
  const deviation = compensatedSum(moments.map((group) => (group.n - 1) * Math.log(variance! / group.variance!)));
  const correction = 1 + (compensatedSum(moments.map(({ n }) => 1 / (n - 1))) - 1 / degreesOfFreedom) / (3 * (k - 1));
  const statistic = deviation / correction;
  return { statistic, p: chiSquareUpperTail(statistic, k - 1) };
}
