import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { normalUpperTail } from '../statistics/distributions.ts';
import type { AreaReading } from './area-reading.ts';
import { LEVELS, lighterThan, STEPS, type Levels } from './levels.ts';
import { halfWay, startThreshold } from './start-threshold.ts';
import { twoSides, type Side, type TwoSides } from './two-sides.ts';

/** What a threshold makes of a region. */
export interface RemovedArea {
  /** Percent of the region; n = 1: one picture. */
  removedPct: ResultValue;
  removedPixels: number;
  pixels: number;
  /** Distance between the greys of print and bare places, in standard deviations within them. */
  contrast: number;
  /** Median grey of the print and of the bare places; `null` for a side without pixels. */
  printGrey: number | null;
  bareGrey: number | null;
  flags: Flag[];
}

/**
 * Below this contrast the two sides run into one another: half way between them 0.6 % of each is taken for the other at 5,
 * 2.3 % at 4, and a single grey that is parted in its middle looks like two sides 2.3 apart.
 */
export const LEAST_CONTRAST = 5;
/** The share of the distance between the greys by which a person's threshold may be off beside what the camera leaves open. */
const PLACING = 0.05;
/** A threshold farther from the middle than this share of the distance is pointed out. */
const OFF_MIDDLE = 0.2;
/** Corners and the pixel grid shift an edge by up to about this much of a pixel, to one side all along. */
const EDGE_SHIFT = 0.05;
/** A picture that tells no better than this is pointed out. */
const WIDEST_HALF_PCT = 1;

/**
 * The share of a region beyond the threshold, with a 95 % interval from four sources, each to its own side and added in
 * quadrature: where the threshold stands (the area counted at the ends of the band in which the half-way grey may lie), edge
 * pixels (counted by how far each lies between the two greys instead of as whole), grain that carries pixels across the
 * threshold, and the pixel grid along edges. Ours; tests/reference/picture says how often it covers the true share.
 * It says how well this picture was read, not how the next specimen would turn out.
 * @param start print and bare places as the program's own threshold parts them: their greys are read there, since a threshold
 *   that cuts into the grain of one side would make two of it. Where that finds no two sides, those at `threshold` count.
 * @throws InputError on `threshold` when print and bare places run into one another
 */
export function removedArea(levels: Levels, { threshold, removed }: Pick<AreaReading, 'threshold' | 'removed'>, start = twoSides(levels, startThreshold(levels))): RemovedArea {
  const { count } = levels;
  const sides = contrastOf(start, threshold) >= LEAST_CONTRAST ? start : twoSides(levels, threshold);
  const { dark, light } = greysOf(sides, threshold);
  const contrast = contrastOf(sides, threshold);
  if (contrast < LEAST_CONTRAST) throw new InputError('threshold', threshold, overlapText(contrast, sides.darker.pixels === 0 || sides.lighter.pixels === 0));

  const lighter = lighterThan(levels, threshold) / count;
  const middle = halfWay(dark.median, light.median);
  const reach = Math.max(1, (middle.high - middle.low) / 2 + PLACING * (light.median - dark.median));
  const more = lighterThan(levels, threshold - reach) / count - lighter;
  const less = lighter - lighterThan(levels, threshold + reach) / count;
  const mixed = lighterByShare(levels, dark.median, light.median) / count - lighter;
  const strayUp = (sides.darker.pixels / count) * normalUpperTail((threshold - dark.median) / dark.spread);
  const strayDown = (sides.lighter.pixels / count) * normalUpperTail((light.median - threshold) / light.spread);
  const grid = (EDGE_SHIFT * sides.edge) / count;
  const low = Math.max(0, lighter - Math.hypot(less, Math.max(0, -mixed), strayUp, grid));
  const high = Math.min(1, lighter + Math.hypot(more, Math.max(0, mixed), strayDown, grid));

  const [share, from, to] = removed === 'lighter' ? [lighter, low, high] : [1 - lighter, 1 - high, 1 - low];
  const [print, bare] = removed === 'lighter' ? [sides.darker, sides.lighter] : [sides.lighter, sides.darker];
  return {
    removedPct: { value: 100 * share, unit: '%', low: 100 * from, high: 100 * to, level: 0.95, n: 1, bound: 'exact' },
    removedPixels: Math.round(share * count),
    pixels: count,
    contrast,
    printGrey: print.grey?.median ?? null,
    bareGrey: bare.grey?.median ?? null,
    flags: [...oneSided(print, bare), ...offMiddle(print, bare, threshold, middle.middle, light.median - dark.median), ...softEdges(100 * (high - low))],
  };
}

/** 1 for the pixels of the region that count as removed. */
export function removedMask({ inside, quarters }: Levels, { threshold, removed }: Pick<AreaReading, 'threshold' | 'removed'>): Uint8Array {
  const cut = threshold * STEPS;
  return Uint8Array.from(quarters, (quarter, index) => (inside[index] === 1 && quarter > cut === (removed === 'lighter') ? 1 : 0));
}

function contrastOf(sides: TwoSides, threshold: number): number {
  const { dark, light } = greysOf(sides, threshold);
  return (light.median - dark.median) / Math.sqrt((dark.spread ** 2 + light.spread ** 2) / 2);
}

/** A side without pixels is taken to lie as far beyond the threshold as the other does before it. */
function greysOf({ darker, lighter }: TwoSides, threshold: number) {
  const dark = darker.grey ?? { median: 2 * threshold - lighter.grey!.median, spread: lighter.grey!.spread };
  const light = lighter.grey ?? { median: 2 * threshold - darker.grey!.median, spread: darker.grey!.spread };
  return { dark, light };
}

/** Each pixel by how far it lies from the darker to the lighter grey, whole beyond the quarter next to either. */
function lighterByShare({ histogram }: Levels, dark: number, light: number): number {
  let sum = 0;
  for (let quarter = 0; quarter < LEVELS; quarter++) {
    const share = (quarter / STEPS - dark) / (light - dark);
    sum += histogram[quarter]! * (share < 0.25 ? 0 : share > 0.75 ? 1 : share);
  }
  return sum;
}

function overlapText(contrast: number, oneSide: boolean): string {
  if (oneSide) return 'All of the region lies on one side, but too near the threshold to tell it from the other; move the threshold farther away.';
  return (
    `Print and bare places run into one another here: their greys lie ${contrast.toFixed(1)} standard deviations apart, and at least ${LEAST_CONTRAST} are needed. ` +
    'Take out the grain, even out the light, choose another colour or a smaller region, or take the picture again in better light. Where nothing was removed, move the threshold until nothing is marked.'
  );
}

function oneSided(print: Side, bare: Side): Flag[] {
  if (print.grey && bare.grey) return [];
  const what = bare.grey ? 'marked as removed' : 'marked as print';
  return [{ code: 'one-sided', where: 'threshold', text: `All of the region is ${what}. How the other side would look cannot be seen in it: look at the print itself.` }];
}

function softEdges(widthPct: number): Flag[] {
  if (widthPct <= 2 * WIDEST_HALF_PCT) return [];
  const text = `The edges are so soft for patches of this size that the area is known to no better than ± ${(widthPct / 2).toFixed(1)} % of the region; a sharper picture from nearer tells more.`;
  return [{ code: 'soft-edges', where: 'region', text }];
}

function offMiddle(print: Side, bare: Side, threshold: number, middle: number, distance: number): Flag[] {
  if (!print.grey || !bare.grey || Math.abs(threshold - middle) <= OFF_MIDDLE * distance) return [];
  return [{ code: 'threshold-off-middle', where: 'threshold', text: `The threshold ${threshold} stands away from the middle between print and bare places (${middle.toFixed(0)}); edges and thin places are counted to one side.` }];
}
