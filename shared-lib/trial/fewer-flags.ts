import type { Flag } from '../calculation/result.ts';

/** More flags of one kind than this are one flag more. */
const MOST_OF_ONE_KIND = 5;

/**
 * The flags of a comparison for the screen: of one kind the first few in full, the others by their count. Their texts name
 * the trial, so a place in the input is left out.
 */
export function fewerFlags(flags: readonly Flag[]): Flag[] {
  const kinds = new Map<string, Flag[]>();
  for (const flag of flags) kinds.set(flag.code, [...(kinds.get(flag.code) ?? []), { ...flag, where: '' }]);
  return [...kinds].flatMap(([code, all]) => {
    if (all.length <= MOST_OF_ONE_KIND + 1) return all;
    return [...all.slice(0, MOST_OF_ONE_KIND), { code, where: '', text: `The same holds for ${all.length - MOST_OF_ONE_KIND} more trials.` }];
  });
}
