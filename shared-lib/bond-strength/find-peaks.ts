import type { Range } from './plateau.ts';

/**
 * Indices of the force peaks in a range. A peak is the highest point between two falls of at least `fallN`; before each
 * but the first the force also rose by at least `fallN`. Of a flat top the first point. The end of the range is no peak:
 * the force must come down again. One pass.
 * @param fallN more than 0; what is smaller is taken as noise.
 */
export function findPeaks(forceN: Float64Array, { start, end }: Range, fallN: number): number[] {
  const peaks: number[] = [];
  let rising = true;
  let highest = start;
  let lowest = start;
  for (let index = start + 1; index < end; index += 1) {
    const force = forceN[index]!;
    if (rising) {
      if (force > forceN[highest]!) highest = index;
      else if (forceN[highest]! - force >= fallN) {
        // A range that begins on a fall has its highest point at the very start: no rise was seen, so no peak.
        if (highest > start) peaks.push(highest);
        lowest = index;
        rising = false;
      }
    } else if (force < forceN[lowest]!) lowest = index;
    else if (force - forceN[lowest]! >= fallN) {
      highest = index;
      rising = true;
    }
  }
  return peaks;
}
