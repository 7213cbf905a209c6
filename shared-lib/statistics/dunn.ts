import { normalUpperTail } from './distributions.ts';
import { midranks } from './ranks.ts';

/**
 * Two-sided p, not adjusted, that groups a and b lie at one level, by the mean ranks among all groups; corrected for ties.
 * For many small groups, where tests of two groups alone could never find anything.
 * @returns p per pair as asked; 1 where all readings are equal.
 * Source: O. J. Dunn, Technometrics 6 (1964) 241.
 */
export function dunnP(groups: readonly (readonly number[])[], pairs: readonly (readonly [number, number])[]): number[] {
  const { ranks, ties } = midranks(groups.flat());
  const n = ranks.length;
  let place = 0;
  const means = groups.map(({ length }) => ranks.slice(place, (place += length)).reduce((sum, rank) => sum + rank, 0) / length);
  const variance = (n * (n + 1)) / 12 - ties / (12 * (n - 1));
  return pairs.map(([a, b]) => {
    const error = Math.sqrt(variance * (1 / groups[a]!.length + 1 / groups[b]!.length));
    return error > 0 ? Math.min(1, 2 * normalUpperTail(Math.abs(means[a]! - means[b]!) / error)) : 1;
  });
}
