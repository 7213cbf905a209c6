/**
 * Grey is kept in quarters once light has been evened out, so that the last digits of a logarithm, which differ between
 * processors, cannot move a pixel across a threshold.
 */
export const STEPS = 4;
/** Evened-out light may lift a pixel above white. */
export const LEVELS = 512 * STEPS;

/** Grey values of the pixels of a region, and how many there are of each. */
export interface Levels {
  width: number;
  height: number;
  /** 1 for pixels that count. */
  inside: Uint8Array;
  /** Quarters of a grey. */
  quarters: Uint16Array;
  /** Pixels at each quarter. */
  histogram: Uint32Array;
  /** Pixels that count. */
  count: number;
}

export function levelsOf(width: number, height: number, inside: Uint8Array, greyAt: (index: number) => number): Levels {
  const quarters = new Uint16Array(inside.length);
  const histogram = new Uint32Array(LEVELS);
  let count = 0;
  for (let index = 0; index < inside.length; index++) {
    const quarter = Math.min(LEVELS - 1, Math.max(0, Math.round(greyAt(index) * STEPS)));
    quarters[index] = quarter;
    if (inside[index]) {
      histogram[quarter]!++;
      count++;
    }
  }
  return { width, height, inside, quarters, histogram, count };
}

/** Pixels lighter than `threshold` (in grey). */
export function lighterThan({ histogram }: Levels, threshold: number): number {
  let sum = 0;
  for (let quarter = Math.max(0, Math.floor(threshold * STEPS) + 1); quarter < LEVELS; quarter++) sum += histogram[quarter]!;
  return sum;
}
