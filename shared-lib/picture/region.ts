import { InputError } from '../calculation/input-error.ts';
import type { Region } from './area-reading.ts';

export interface Bounds {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Fewer pixels than this cannot tell one percent. */
export const FEWEST_PIXELS = 100;

/** The smallest rectangle that holds the region. */
export function boundsOf(region: Region): Bounds {
  if (region.kind === 'rectangle') return { x: region.x, y: region.y, width: region.width, height: region.height };
  const xs = region.points.map(([x]) => x);
  const ys = region.points.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/**
 * 1 for each pixel of the region's bounds that lies in it, row by row.
 * @throws InputError on `region` when it reaches beyond a picture of that size or holds fewer than 100 pixels
 */
export function pixelsInside(region: Region, picture: { width: number; height: number }): Uint8Array {
  const { x, y, width, height } = boundsOf(region);
  if (x + width > picture.width || y + height > picture.height) {
    throw new InputError('region', null, `The region reaches beyond the picture, which is ${picture.width} × ${picture.height} pixels.`);
  }
  const inside = new Uint8Array(width * height);
  if (region.kind === 'rectangle') inside.fill(1);
  else for (let row = 0; row < height; row++) fillRow(inside.subarray(row * width, (row + 1) * width), crossings(region.points, y + row + 0.5), x);
  const count = inside.reduce((sum, one) => sum + one, 0);
  if (count < FEWEST_PIXELS) throw new InputError('region', null, `The region holds ${count} ${count === 1 ? 'pixel' : 'pixels'}; it needs at least ${FEWEST_PIXELS}. Draw it larger, or take the picture from nearer.`);
  return inside;
}

/** The region as seen from a corner of its bounds. */
export function moved(region: Region, by: { x: number; y: number }): Region {
  if (region.kind === 'rectangle') return { ...region, x: region.x + by.x, y: region.y + by.y };
  return { kind: 'polygon', points: region.points.map(([x, y]) => [x + by.x, y + by.y]) };
}

/** Where the sides of the polygon cross the line at height `y`, from the left. */
function crossings(points: readonly (readonly [number, number])[], y: number): number[] {
  const found: number[] = [];
  points.forEach(([x1, y1], index) => {
    const [x2, y2] = points[(index + 1) % points.length]!;
    if (y1 < y !== y2 < y) found.push(x1 + ((y - y1) * (x2 - x1)) / (y2 - y1));
  });
  return found.sort((a, b) => a - b);
}

function fillRow(row: Uint8Array, at: number[], left: number): void {
  for (let pair = 0; pair + 1 < at.length; pair += 2) {
    const from = Math.max(0, Math.ceil(at[pair]! - left - 0.5));
    const to = Math.min(row.length, Math.ceil(at[pair + 1]! - left - 0.5));
    if (to > from) row.fill(1, from, to);
  }
}
