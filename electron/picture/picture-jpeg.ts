import { createCanvas, ImageData } from '@napi-rs/canvas';
import type { DecodedPicture } from './decode-picture.ts';

const QUALITY = 85;

/**
 * The picture as a JPEG in a data address, for the screen and the report.
 * @param longest pixels on the longer side, at most
 */
export async function pictureJpeg({ width, height, rgb }: Pick<DecodedPicture, 'width' | 'height' | 'rgb'>, longest = Infinity): Promise<{ jpeg: string; width: number; height: number }> {
  const canvas = createCanvas(width, height);
  const data = new Uint8ClampedArray(width * height * 4);
  for (let index = 0; index < width * height; index++) {
    for (let colour = 0; colour < 3; colour++) data[4 * index + colour] = rgb[3 * index + colour]!;
    data[4 * index + 3] = 255;
  }
  canvas.getContext('2d').putImageData(new ImageData(data, width, height), 0, 0);
  const shrink = Math.min(1, longest / Math.max(width, height));
  const shown = shrink === 1 ? canvas : createCanvas(Math.max(1, Math.round(width * shrink)), Math.max(1, Math.round(height * shrink)));
  if (shown !== canvas) shown.getContext('2d').drawImage(canvas, 0, 0, shown.width, shown.height);
  const bytes = await shown.encode('jpeg', QUALITY);
  return { jpeg: `data:image/jpeg;base64,${bytes.toString('base64')}`, width: shown.width, height: shown.height };
}
