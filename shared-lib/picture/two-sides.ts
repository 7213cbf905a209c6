import { LEVELS, STEPS, type Levels } from './levels.ts';

/** The pixels on one side of a threshold. */
export interface Side {
  pixels: number;
  /** Median and standard deviation of their grey, away from edges; `null` without pixels. */
  grey: { median: number; spread: number } | null;
}

export interface TwoSides {
  darker: Side;
  lighter: Side;
  /** Pixels with a neighbour on the other side. */
  edge: number;
}

/** With fewer pixels away from edges than this, all pixels of a side are taken. */
const FEWEST_CORE = 30;
/** Pixels whose neighbours at this distance lie on the same side are away from edges. */
const REACH = 2;
/** Rounding to whole grey alone spreads by this much. */
const LEAST_SPREAD = 1 / Math.sqrt(12);

/**
 * Parts the pixels at a threshold. Spread is 1.4826 times the median absolute deviation (P. J. Rousseeuw, C. Croux,
 * J. Am. Stat. Assoc. 88 (1993) 1273), which dust and edges do not pull.
 */
export function twoSides(levels: Levels, threshold: number): TwoSides {
  const { width, height, inside, quarters } = levels;
  const cut = threshold * STEPS;
  const core = [new Uint32Array(LEVELS), new Uint32Array(LEVELS)] as const;
  const all = [new Uint32Array(LEVELS), new Uint32Array(LEVELS)] as const;
  const side = (index: number) => (quarters[index]! > cut ? 1 : 0);
  let edge = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const index = y * width + x;
      if (!inside[index]) continue;
      const own = side(index);
      const differs = (dx: number, dy: number) => {
        const other = index + dy * width + dx;
        return x + dx >= 0 && x + dx < width && y + dy >= 0 && y + dy < height && inside[other] === 1 && side(other) !== own;
      };
      all[own][quarters[index]!]!++;
      if (differs(1, 0) || differs(-1, 0) || differs(0, 1) || differs(0, -1)) edge++;
      else if (!differs(REACH, 0) && !differs(-REACH, 0) && !differs(0, REACH) && !differs(0, -REACH)) core[own][quarters[index]!]!++;
    }
  }
  const of = (own: 0 | 1): Side => {
    const pixels = total(all[own]);
    const taken = total(core[own]) >= FEWEST_CORE ? core[own] : all[own];
    return { pixels, grey: pixels === 0 ? null : spreadOf(taken) };
  };
  return { darker: of(0), lighter: of(1), edge };
}

function spreadOf(histogram: Uint32Array): { median: number; spread: number } {
  const median = medianOf(histogram);
  const deviations = new Uint32Array(LEVELS);
  for (let quarter = 0; quarter < LEVELS; quarter++) deviations[Math.abs(quarter - Math.round(median * STEPS))]! += histogram[quarter]!;
  return { median, spread: Math.max(LEAST_SPREAD, 1.4826 * medianOf(deviations)) };
}

/** Middle of the values in a histogram; values are taken as spread evenly over the whole grey that they were rounded to. */
function medianOf(histogram: Uint32Array): number {
  const half = total(histogram) / 2;
  let below = 0;
  for (let quarter = 0; quarter < LEVELS; quarter++) {
    below += histogram[quarter]!;
    if (below >= half) return quarter / STEPS;
  }
  return 0;
}

function total(histogram: Uint32Array): number {
  return histogram.reduce((sum, pixels) => sum + pixels, 0);
}
