import { createCanvas, Image } from '@napi-rs/canvas';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { pictureHeader } from './picture-header.ts';

/** Larger pictures are not decoded: each pixel takes four bytes, and as many again on the way. */
export const MOST_PIXELS = 50_000_000;

/** A picture upright, on white, no longer than asked on its longer side. */
export interface DecodedPicture {
  width: number;
  height: number;
  /** Red, green, blue per pixel. */
  rgb: Uint8Array;
  /** Upright, as it came. */
  original: { width: number; height: number };
  /** What was done to it that the person must know. */
  notes: string[];
}

/**
 * Decodes a PNG, JPEG or WebP picture and makes it smaller by a whole factor, each new pixel the mean of those that it stands for.
 * Orientation from EXIF is heeded, transparent places are laid on white.
 * @param longest pixels on the longer side, at most
 * @throws InputError on `bytes` for what is no such picture, above 50 million pixels, cut off or damaged
 */
export async function decodePicture(bytes: Uint8Array, longest: number): Promise<DecodedPicture> {
  const header = pictureHeader(bytes);
  if (!header) throw new InputError('bytes', null, 'This file is no PNG, JPEG or WebP picture, or its beginning is damaged; save the picture as one of these and choose it again.');
  const pixels = header.width * header.height;
  if (pixels === 0) throw new InputError('bytes', null, 'This picture says that it has no pixels; it is damaged.');
  if (pixels > MOST_PIXELS) {
    throw new InputError('bytes', pixels, `This picture has ${Math.round(pixels / 1e6)} million pixels (${header.width} × ${header.height}); at most ${MOST_PIXELS / 1e6} million can be read. Make it smaller, or crop it to what counts.`);
  }
  if (header.cutOff) throw new InputError('bytes', null, 'This picture ends too early: the file did not arrive whole. Copy it again.');
  const image = new Image();
  try {
    image.src = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    await image.decode();
  } catch {
    throw new InputError('bytes', null, 'This picture cannot be decoded; the file is damaged.');
  }
  return smaller(image, longest);
}

/** Strip by strip, so that a large picture is not held twice. */
function smaller(image: Image, longest: number): DecodedPicture {
  const original = { width: image.width, height: image.height };
  const factor = Math.max(1, Math.ceil(Math.max(original.width, original.height) / longest));
  const width = Math.max(1, Math.floor(original.width / factor));
  const height = Math.max(1, Math.floor(original.height / factor));
  const [across, down] = [Math.min(factor, original.width), Math.min(factor, original.height)];
  const rgb = new Uint8Array(width * height * 3);
  const rowsAtOnce = Math.max(1, Math.min(height, Math.floor(2_000_000 / (original.width * down))));
  const strip = createCanvas(original.width, rowsAtOnce * down);
  const context = strip.getContext('2d');
  let transparent = false;
  for (let top = 0; top < height; top += rowsAtOnce) {
    const rows = Math.min(rowsAtOnce, height - top);
    context.clearRect(0, 0, strip.width, strip.height);
    context.drawImage(image, 0, -top * down);
    const { data } = context.getImageData(0, 0, strip.width, rows * down);
    for (let y = 0; y < rows; y++) {
      for (let x = 0; x < width; x++) {
        const sums = [0, 0, 0];
        for (let dy = 0; dy < down; dy++) {
          for (let dx = 0; dx < across; dx++) {
            const at = 4 * ((y * down + dy) * strip.width + x * across + dx);
            const opaque = data[at + 3]! / 255;
            if (opaque < 1) transparent = true;
            for (let colour = 0; colour < 3; colour++) sums[colour]! += data[at + colour]! * opaque + 255 * (1 - opaque);
          }
        }
        for (let colour = 0; colour < 3; colour++) rgb[3 * ((top + y) * width + x) + colour] = Math.round(sums[colour]! / (across * down));
      }
    }
  }
  return { width, height, rgb, original, notes: transparent ? ['The picture is transparent in places; they are laid on white.'] : [] };
}
