import type { GreyPicture } from '../../../shared-lib/picture/picture.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';

export interface Making {
  seed: number;
  width: number;
  height: number;
  /** How much is removed, about; the exact share is counted. */
  share: number;
  /** Radius of the removed patches, in pixels. */
  patch: number;
  /** Grey of print and of bare places. */
  print: number;
  bare: number;
  /** Standard deviations of blur (pixels) and grain (grey). */
  blur: number;
  grain: number;
  /** Light falls from 1 + slope/2 to 1 − slope/2 across the picture, and `vignette` lower in the corners. */
  slope: number;
  vignette: number;
  /** Blur in the light itself, as a lens does it, or in the coded grey, as programs do it. */
  blurIn: 'light' | 'grey';
}

export const plain: Making = { seed: 1, width: 320, height: 240, share: 0.2, patch: 18, print: 60, bare: 200, blur: 0, grain: 0, slope: 0, vignette: 0, blurIn: 'light' };

/** Patches of bare film in print. The removed pixels are counted before anything else is done, so the share is exact. */
export function madePicture(making: Making): { picture: GreyPicture; removedPixels: number; removedPct: number } {
  const { seed, width, height, share, patch, print, bare, blur, grain, slope, vignette, blurIn } = making;
  const random = seededRandom(seed);
  const removed = new Uint8Array(width * height);
  let count = 0;
  while (count < share * width * height) {
    const [cx, cy] = [random.uniform() * width, random.uniform() * height];
    const radius = patch * (0.4 + 1.2 * random.uniform());
    const stretch = 0.5 + random.uniform();
    const reach = Math.ceil(2 * radius);
    for (let y = Math.max(0, Math.floor(cy) - reach); y < Math.min(height, cy + reach); y++) {
      for (let x = Math.max(0, Math.floor(cx) - reach); x < Math.min(width, cx + reach); x++) {
        const index = y * width + x;
        if (!removed[index] && ((x - cx) / stretch) ** 2 + ((y - cy) * stretch) ** 2 < radius ** 2) {
          removed[index] = 1;
          count++;
        }
      }
    }
  }
  const [code, decode] = blurIn === 'light' ? [coded, linear] : [(value: number) => value, (value: number) => value];
  const sharp = Float64Array.from(removed, (one) => decode(one ? bare : print));
  const soft = blurred(sharp, width, height, blur);
  const grey = Uint8Array.from(soft, (value, index) => {
    const [x, y] = [(index % width) / (width - 1) - 0.5, Math.floor(index / width) / (height - 1) - 0.5];
    // Light multiplies; coded by a power it multiplies the grey too.
    const light = (1 + slope * x) * (1 - vignette * 2 * (x * x + y * y));
    return Math.min(255, Math.max(0, Math.round(code(value) * light ** (1 / 2.2) + grain * random.normal())));
  });
  return { picture: { width, height, grey }, removedPixels: count, removedPct: (100 * count) / (width * height) };
}

function blurred(values: Float64Array, width: number, height: number, sigma: number): Float64Array {
  if (sigma === 0) return values;
  const reach = Math.ceil(4 * sigma);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma ** 2)));
  const sum = kernel.reduce((total, weight) => total + weight, 0);
  const along = (from: Float64Array, step: number, length: number, placeOf: (index: number) => number) =>
    from.map((_, index) => {
      const place = placeOf(index);
      return kernel.reduce((total, weight, i) => total + weight * from[index + (Math.min(length - 1, Math.max(0, place + i - reach)) - place) * step]!, 0) / sum;
    });
  const across = along(values, 1, width, (index) => index % width);
  return along(across, width, height, (index) => Math.floor(index / width));
}

function linear(grey: number): number {
  const part = grey / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}

function coded(light: number): number {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
}
