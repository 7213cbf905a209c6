/** What the first bytes of a file say of a picture in it. */
export interface PictureHeader {
  mediaType: 'image/png' | 'image/jpeg' | 'image/webp';
  /** As stored; a photograph may still be turned by its orientation. */
  width: number;
  height: number;
  /** The file ends before its picture does. */
  cutOff: boolean;
}

/** Sizes are looked at before anything is decoded: a small file can unfold into gigabytes. `null` for what is no such picture. */
export function pictureHeader(bytes: Uint8Array): PictureHeader | null {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return png(view) ?? jpeg(view) ?? webp(view);
  } catch (error) {
    // Read beyond the end: the header itself is cut off.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function png(view: Buffer): PictureHeader | null {
  if (view.toString('latin1', 0, 8) !== '\x89PNG\r\n\x1a\n' || view.toString('latin1', 12, 16) !== 'IHDR') return null;
  return { mediaType: 'image/png', width: view.readUInt32BE(16), height: view.readUInt32BE(20), cutOff: view.lastIndexOf('IEND', undefined, 'latin1') === -1 };
}

/** Goes from segment to segment to the frame header (ITU-T T.81, B.1.1 and B.2.2). */
function jpeg(view: Buffer): PictureHeader | null {
  if (view.readUInt16BE(0) !== 0xffd8) return null;
  for (let at = 2; ; ) {
    if (view.readUInt8(at) !== 0xff) return null;
    const marker = view.readUInt8(at + 1);
    if (marker === 0xff) at += 1;
    else if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      return { mediaType: 'image/jpeg', width: view.readUInt16BE(at + 7), height: view.readUInt16BE(at + 5), cutOff: view.lastIndexOf(Buffer.from([0xff, 0xd9])) <= at };
    } else if (marker === 0xd9 || marker === 0xda) return null;
    else at += 2 + view.readUInt16BE(at + 2);
  }
}

/** Lossy, lossless and extended form (RFC 9649). */
function webp(view: Buffer): PictureHeader | null {
  if (view.toString('latin1', 0, 4) !== 'RIFF' || view.toString('latin1', 8, 12) !== 'WEBP') return null;
  const cutOff = view.length < view.readUInt32LE(4) + 8;
  const of = (width: number, height: number): PictureHeader => ({ mediaType: 'image/webp', width, height, cutOff });
  switch (view.toString('latin1', 12, 16)) {
    case 'VP8 ':
      return of(view.readUInt16LE(26) & 0x3fff, view.readUInt16LE(28) & 0x3fff);
    case 'VP8L': {
      const bits = view.readUInt32LE(21);
      return of((bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1);
    }
    case 'VP8X':
      return of(view.readUIntLE(24, 3) + 1, view.readUIntLE(27, 3) + 1);
    default:
      return null;
  }
}
