import { createCanvas, ImageData } from '@napi-rs/canvas';
import type { GreyPicture } from '../../../shared-lib/picture/picture.ts';

/** A grey picture as the file that a camera or program would write. */
export function pictureFile({ width, height, grey }: GreyPicture, type: 'image/png' | 'image/jpeg' = 'image/png'): Buffer {
  const canvas = createCanvas(width, height);
  const data = new Uint8ClampedArray(4 * width * height);
  grey.forEach((value, index) => data.set([value, value, value, 255], 4 * index));
  canvas.getContext('2d').putImageData(new ImageData(data, width, height), 0, 0);
  return type === 'image/png' ? canvas.toBuffer('image/png') : canvas.toBuffer('image/jpeg', 95);
}

/** A JPEG with an EXIF orientation put into it (6: turned a quarter to the right to stand upright). */
export function turned(jpeg: Buffer, orientation: number): Buffer {
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  const exif = Buffer.concat([Buffer.from([0xff, 0xe1, 0, 2 + 6 + tiff.length]), Buffer.from('Exif\0\0', 'latin1'), Buffer.from(tiff)]);
  return Buffer.concat([jpeg.subarray(0, 2), exif, jpeg.subarray(2)]);
}

/** A PNG that says of itself that it is `width` × `height`. */
export function pngOfSize(width: number, height: number): Buffer {
  const file = pictureFile({ width: 1, height: 1, grey: Uint8Array.of(7) });
  file.writeUInt32BE(width, 16);
  file.writeUInt32BE(height, 20);
  return file;
}
