import type { Flag } from '../calculation/result.ts';

/**
 * The places of the readings, each patch in the order of its exposure. A reading that was entered after a larger exposure
 * is flagged: light adds up, so it was entered late, or the exposure typed is that of one step and not the one so far.
 * @param patchOf name of the patch that a reading is of
 */
export function orderExposures(readings: readonly { exposure: number }[], places: readonly number[], patchOf: (place: number) => string, flags: Flag[]): number[] {
  const farthest = new Map<string, number>();
  for (const place of places) {
    const patch = patchOf(place);
    const { exposure } = readings[place]!;
    const before = farthest.get(patch);
    if (before !== undefined && exposure < before) {
      const of = patch === '' ? '' : ` of ${patch}`;
      flags.push({ code: 'exposures-out-of-order', where: `readings[${place}].exposure`, text: `The exposure${of} falls from ${before} to ${exposure}; it is taken in its order. Check that it is the exposure so far and not that of the last step.` });
    }
    farthest.set(patch, Math.max(before ?? 0, exposure));
  }
  return [...places].sort((a, b) => readings[a]!.exposure - readings[b]!.exposure || a - b);
}
