import { crc32, deflateSync, inflateSync } from 'node:zlib';
import type { GreyPicture } from '../../shared-lib/picture/picture.ts';

const SIGNATURE = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
/** Each value as the difference from the one on its left: noise packs better. */
const SUB = 1;

/** A grey picture as a PNG of eight bits, which any program shows, and which is read back to the last bit. Source: W3C PNG, 3rd edition. */
export function writeGreyPng({ width, height, grey }: GreyPicture): Uint8Array {
  const lines = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) {
    const at = y * (width + 1);
    lines[at] = SUB;
    for (let x = 0; x < width; x++) lines[at + 1 + x] = grey[y * width + x]! - (x > 0 ? grey[y * width + x - 1]! : 0);
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8;
  return Buffer.concat([SIGNATURE, chunk('IHDR', head), chunk('IDAT', deflateSync(lines)), chunk('IEND', Buffer.alloc(0))]);
}

/** Reads what `writeGreyPng` wrote. @throws Error for anything else */
export function readGreyPng(bytes: Uint8Array): GreyPicture {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [width, height, packed] = [view.readUInt32BE(16), view.readUInt32BE(20), view.readUInt32BE(33)];
  const lines = inflateSync(view.subarray(41, 41 + packed), { maxOutputLength: (width + 1) * height });
  if (lines.length !== (width + 1) * height) throw new Error('The grey of a measured photograph is not as it was written.');
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) grey[y * width + x] = lines[y * (width + 1) + 1 + x]! + (x > 0 ? grey[y * width + x - 1]! : 0);
  }
  return { width, height, grey };
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const frame = Buffer.alloc(4);
  frame.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([frame, body, check]);
}
