import { fUpperTail } from './distributions.ts';
import { groupMoments } from './group-moments.ts';
import { compensatedSum } from './summarise.ts';

export interface WelchAnova {
  f: number;
  numeratorDf: number;
  denominatorDf: number;
  p: number;
}

/**
 * Welch's analysis of variance, which does not ask the groups for one common spread.
 * @returns `null` where a group has one value or no spread: its weight would be without bound.
 * @throws RangeError for fewer than two groups, an empty group or a value that is not finite.
 * Source: B. L. Welch, Biometrika 38 (1951) 330.
 */
export function welchAnova(groups: readonly (readonly number[])[]): WelchAnova | null {
  const moments = groupMoments(groups);
  if (moments.some(({ variance }) => !variance)) return null;
  const weights = moments.map(({ n, variance }) => n / variance!);
  const total = compensatedSum(weights);
  const origin = moments[0]!.mean;
  const means = moments.map(({ mean }) => mean - origin);
  const grand = compensatedSum(means.map((mean, i) => mean * weights[i]!)) / total;
  const k = moments.length;
  const between = compensatedSum(means.map((mean, i) => weights[i]! * (mean - grand) ** 2)) / (k - 1);
  const lack = compensatedSum(moments.map(({ n }, i) => (1 - weights[i]! / total) ** 2 / (n - 1)));
  const f = between / (1 + (2 * (k - 2) * lack) / (k * k - 1));
  const denominatorDf = (k * k - 1) / (3 * lack);
  if (!Number.isFinite(f) || !Number.isFinite(denominatorDf)) return null;
  return { f, numeratorDf: k - 1, denominatorDf, p: fUpperTail(f, k - 1, denominatorDf) };
}
