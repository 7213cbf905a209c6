import { fUpperTail } from './distributions.ts';
import { groupMoments } from './group-moments.ts';
import { compensatedSum } from './summarise.ts';

export interface OneWayAnova {
  between: { sumOfSquares: number; degreesOfFreedom: number; meanSquare: number };
  within: { sumOfSquares: number; degreesOfFreedom: number; meanSquare: number };
  /** `null` where the groups show no spread within, so that F has no finite value. */
  f: number | null;
  p: number | null;
  rSquared: number | null;
  residualSd: number;
}

/**
 * One-way analysis of variance. All sums are compensated and centred, group means on an origin of their own, which
 * reaches the limit of the data on the NIST StRD sets.
 * @returns `null` where no group has two values, so that there is no spread within to compare with.
 * @throws RangeError for fewer than two groups, an empty group or a value that is not finite.
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova | null {
  const origin = groups[0]?.[0] ?? 0;
  const moments = groupMoments(groups.map((values) => values.map((value) => value - origin)));
  const count = compensatedSum(moments.map(({ n }) => n));
  const betweenDf = moments.length - 1;
  const withinDf = count - moments.length;
  if (withinDf === 0) return null;
  const grand = compensatedSum(moments.map(({ n, mean }) => n * mean)) / count;
  const shifts = moments.map(({ mean }) => mean - grand);
  const betweenSquares = compensatedSum(moments.map(({ n }, i) => n * shifts[i]! ** 2)) - compensatedSum(moments.map(({ n }, i) => n * shifts[i]!)) ** 2 / count;
  const withinSquares = compensatedSum(moments.map(({ squares }) => squares));
  const between = { sumOfSquares: betweenSquares, degreesOfFreedom: betweenDf, meanSquare: betweenSquares / betweenDf };
  const within = { sumOfSquares: withinSquares, degreesOfFreedom: withinDf, meanSquare: withinSquares / withinDf };
  const ratio = between.meanSquare / within.meanSquare;
  const f = Number.isFinite(ratio) ? ratio : null;
  const total = betweenSquares + withinSquares;
  return {
    between,
    within,
    f,
    p: f === null ? null : fUpperTail(f, betweenDf, withinDf),
    rSquared: total > 0 ? betweenSquares / total : null,
    residualSd: Math.sqrt(within.meanSquare),
  };
}
