/**
 * How the marked pixels of a picture look: hatched, so that print is seen through them, with their edge drawn out, so that it
 * is not told by colour alone.
 * @param mask 1 for pixels that are marked, `width` to a row
 * @param period pixels from one stroke of the hatching to the next
 * @returns red, green, blue and opacity of a pixel, each 0–255, or `null` where it is not marked
 */
export function maskLook(mask: Uint8Array, width: number, index: number, period: number): readonly [number, number, number, number] | null {
  if (!mask[index]) return null;
  const column = index % width;
  const inner = column > 0 && column < width - 1 && index >= width && index < mask.length - width;
  if (inner && !(mask[index - 1] && mask[index + 1] && mask[index - width] && mask[index + width])) return EDGE;
  return (column + Math.floor(index / width)) % period < period / 4 ? STROKE : BETWEEN;
}

/** Strokes of the hatching across a picture. */
export const STROKES = 90;

const EDGE = [120, 30, 0, 255] as const;
const STROKE = [230, 120, 0, 235] as const;
const BETWEEN = [240, 180, 60, 90] as const;
