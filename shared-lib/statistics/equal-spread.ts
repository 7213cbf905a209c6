import { chiSquareUpperTail } from './distributions.ts';
import { groupMoments, pooledVariance } from './group-moments.ts';
import { oneWayAnova } from './one-way-anova.ts';
import { compensatedSum, meanOf } from './summarise.ts';

export interface SpreadTest {
  statistic: number;
  p: number;
}

/**
 * Do the groups have one spread? Analysis of variance of the distances from each group's centre: Brown–Forsythe's test
 * about the median, Levene's about the mean.
 * @returns `null` where the distances show no spread, e.g. for one value or two per group about their median.
 * Source: M. B. Brown, A. B. Forsythe, J. Am. Stat. Assoc. 69 (1974) 364.
 */
export function leveneTest(groups: readonly (readonly number[])[], centre: 'median' | 'mean' = 'median'): SpreadTest | null {
  const anova = oneWayAnova(groups.map((values) => {
    const middle = centre === 'median' ? medianOf(values) : meanOf(values);
    return values.map((value) => Math.abs(value - middle));
  }));
  return anova === null || anova.f === null || anova.p === null ? null : { statistic: anova.f, p: anova.p };
}

/**
 * Bartlett's test of one spread: sharper than Levene's for normal readings, misled by others.
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

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
