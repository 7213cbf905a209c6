import type { GreyPicture } from './picture.ts';

/** Each pixel becomes the median of itself and its eight neighbours; edges stay where they are, grain goes. At the border the nearest pixel stands in. */
export function medianOfNine({ width, height, grey }: GreyPicture): GreyPicture {
  const smooth = new Uint8Array(grey.length);
  const nine = new Uint8Array(9);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let filled = 0;
      for (let dy = -1; dy <= 1; dy++) {
        const row = Math.min(height - 1, Math.max(0, y + dy)) * width;
        for (let dx = -1; dx <= 1; dx++) {
          const value = grey[row + Math.min(width - 1, Math.max(0, x + dx))]!;
          let place = filled++;
          for (; place > 0 && nine[place - 1]! > value; place--) nine[place] = nine[place - 1]!;
          nine[place] = value;
        }
      }
      smooth[y * width + x] = nine[4]!;
    }
  }
  return { width, height, grey: smooth };
}
