import { createCanvas } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { decodePicture } from '../../../electron/picture/decode-picture.ts';
import { readGreyPng, writeGreyPng } from '../../../electron/picture/grey-png.ts';
import { mediaTypeOf } from '../../../electron/picture/media-type.ts';
import { pictureHeader } from '../../../electron/picture/picture-header.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import { pictureFile, pngOfSize, turned } from './picture-file.ts';

const ramp = { width: 40, height: 30, grey: Uint8Array.from({ length: 1200 }, (_, index) => (index * 7) % 256) };

describe('decodePicture', () => {
  it('gives every pixel of a PNG as it is', async () => {
    const { width, height, rgb, notes } = await decodePicture(pictureFile(ramp), 1600);
    expect([width, height, notes]).toEqual([40, 30, []]);
    expect(Uint8Array.from(ramp.grey, (_, index) => rgb[3 * index]!)).toEqual(ramp.grey);
  });

  it('makes a large picture smaller by a whole factor, each pixel the mean of its block', async () => {
    const { width, height, rgb, original } = await decodePicture(pictureFile({ width: 4, height: 2, grey: Uint8Array.of(10, 20, 100, 100, 30, 40, 200, 101) }), 2);
    expect({ width, height, original }).toEqual({ width: 2, height: 1, original: { width: 4, height: 2 } });
    expect([rgb[0], rgb[3]]).toEqual([25, 125]);
  });

  it('keeps each strip of a picture that is taken in several', async () => {
    const grey = Uint8Array.from({ length: 3000 * 1400 }, (_, index) => (Math.floor(index / 3000) >> 3) % 256);
    const { rgb, width, height } = await decodePicture(pictureFile({ width: 3000, height: 1400, grey }), 1500);
    expect([width, height]).toEqual([1500, 700]);
    expect([0, 333, 699].map((y) => rgb[3 * (y * width + 700)])).toEqual([0, 83, 174]);
  });

  it('stands a photograph upright that the camera turned', async () => {
    const half = { width: 32, height: 16, grey: Uint8Array.from({ length: 512 }, (_, index) => (index % 32 < 16 ? 20 : 230)) };
    const { width, height, rgb } = await decodePicture(turned(pictureFile(half, 'image/jpeg'), 6), 1600);
    expect([width, height]).toEqual([16, 32]);
    expect(rgb[3 * (16 * 4 + 8)]!).toBeLessThan(40);
    expect(rgb[3 * (16 * 28 + 8)]!).toBeGreaterThan(210);
  });

  it('lays transparent places on white, and says so', async () => {
    const canvas = createCanvas(20, 20);
    canvas.getContext('2d').fillRect(0, 0, 10, 20);
    const { rgb, notes } = await decodePicture(canvas.toBuffer('image/png'), 1600);
    expect([rgb[0], rgb[3 * 15]]).toEqual([0, 255]);
    expect(notes).toEqual(['The picture is transparent in places; they are laid on white.']);
  });

  it.each<[string, Buffer, RegExp]>([
    ['of 100 megapixels', pngOfSize(10_000, 10_000), /^This picture has 100 million pixels \(10000 × 10000\); at most 50 million can be read/],
    ['that is none', Buffer.from('hello, this is no picture'), /is no PNG, JPEG or WebP picture/],
    ['that is a drawing', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="5" height="5"/>'), /is no PNG, JPEG or WebP picture/],
    ['that is empty', Buffer.alloc(0), /is no PNG, JPEG or WebP picture/],
    ['of which the header is cut off', pictureFile(ramp).subarray(0, 18), /is no PNG, JPEG or WebP picture/],
    ['of which the end is cut off', pictureFile(ramp).subarray(0, 200), /ends too early/],
    ['of which the end is cut off, as JPEG', pictureFile(ramp, 'image/jpeg').subarray(0, -40), /ends too early/],
    ['without a pixel', pngOfSize(0, 5), /has no pixels/],
    ['that lies about its size', pngOfSize(50, 50), /cannot be decoded/],
  ])('refuses a picture %s', async (_name, bytes, says) => {
    await expect(decodePicture(bytes, 1600)).rejects.toThrow(says);
  });

  it('takes a picture of one pixel', async () => {
    expect(await decodePicture(pngOfSize(1, 1), 1600)).toMatchObject({ width: 1, height: 1 });
  });
});

describe('the kind of a file', () => {
  it('is told by its content for pictures and PDF, by its name for the rest', () => {
    expect(mediaTypeOf('a.pdf', pictureFile(ramp))).toBe('image/png');
    expect(mediaTypeOf('a.jpg', Buffer.from('%PDF-1.7'))).toBe('application/pdf');
    expect(mediaTypeOf('A.CSV', Buffer.from('1;2'))).toBe('text/csv');
    expect(mediaTypeOf('a.png', Buffer.from('MZ'))).toBe('application/octet-stream');
  });

  it('is found for WebP with its size', () => {
    const webp = createCanvas(33, 21).toBuffer('image/webp');
    expect(pictureHeader(webp)).toMatchObject({ mediaType: 'image/webp', width: 33, height: 21, cutOff: false });
  });
});

describe('the grey that is kept with a measured photograph', () => {
  it('is read back to the last bit, and any program shows it', async () => {
    const random = seededRandom(3);
    const plane = { width: 37, height: 23, grey: Uint8Array.from({ length: 37 * 23 }, () => 256 * random.uniform()) };
    const file = writeGreyPng(plane);
    expect(readGreyPng(file)).toEqual(plane);
    const shown = await decodePicture(file, 1600);
    expect(plane.grey.every((value, index) => shown.rgb[3 * index] === value)).toBe(true);
  });
});
