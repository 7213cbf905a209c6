import { createCanvas, ImageData } from '@napi-rs/canvas';
import type { DecodedPicture } from './decode-picture.ts';

const QUALITY = 85;

/** The picture as a JPEG in a data address, for the screen and the report. */
export async function pictureJpeg({ width, height, rgb }: Pick<DecodedPicture, 'width' | 'height' | 'rgb'>): Promise<string> {
  const canvas = createCanvas(width, height);
  const data = new Uint8ClampedArray(width * height * 4);
  for (let index = 0; index < width * height; index++) {
    data.set(rgb.subarray(3 * index, 3 * index + 3), 4 * index);
    data[4 * index + 3] = 255;
  }
  canvas.getContext('2d').putImageData(new ImageData(data, width, height), 0, 0);
  const bytes = await canvas.encode('jpeg', QUALITY);
  return `data:image/jpeg;base64,${bytes.toString('base64')}`;
}
