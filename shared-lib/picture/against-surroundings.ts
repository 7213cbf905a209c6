import type { GreyPicture } from './picture.ts';

/** Grey against the mean of the square around the pixel, half the picture wide; 128 where both are alike. */
export function againstSurroundings({ width, height, grey }: GreyPicture, inside: Uint8Array): Float64Array {
  const across = width + 1;
  const sums = new Float64Array(across * (height + 1));
  const counts = new Float64Array(sums.length);
  for (let y = 0; y < height; y++) {
    let [rowSum, rowCount] = [0, 0];
    for (let x = 0; x < width; x++) {
      const index = y * width + x;
      if (inside[index]) [rowSum, rowCount] = [rowSum + grey[index]!, rowCount + 1];
      const at = (y + 1) * across + x + 1;
      sums[at] = sums[at - across]! + rowSum;
      counts[at] = counts[at - across]! + rowCount;
    }
  }
  const half = Math.ceil(Math.min(width, height) / 4);
  return Float64Array.from(grey, (value, index) => {
    const [x, y] = [index % width, Math.floor(index / width)];
    const [left, right] = [Math.max(0, x - half), Math.min(width, x + half + 1)];
    const [top, bottom] = [Math.max(0, y - half) * across, Math.min(height, y + half + 1) * across];
    const boxed = (table: Float64Array) => table[bottom + right]! - table[bottom + left]! - table[top + right]! + table[top + left]!;
    return Math.min(255, (128 * value * boxed(counts)) / Math.max(1, boxed(sums)));
  });
}
