import { InputError } from '../../shared-lib/calculation/input-error.ts';

/** Largest file that is read, 24 MB: about a million lines. */
const MOST_BYTES = 24 * 1024 * 1024;

/** First bytes of files that are no text, with what they are. */
const BINARY_STARTS: { bytes: number[]; what: string }[] = [
  { bytes: [0x50, 0x4b, 0x03, 0x04], what: 'a workbook or another zipped file' },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], what: 'a workbook of an older kind' },
  { bytes: [0x25, 0x50, 0x44, 0x46], what: 'a PDF' },
  { bytes: [0x1f, 0x8b], what: 'a compressed file' },
];

/**
 * The text of a CSV file: UTF-8 or UTF-16 by its byte-order mark, UTF-16 without one by its zero bytes, UTF-8 where it is
 * valid, else Windows-1252.
 * @throws InputError (`bytes`) for an empty or too large file and for a file that is no text.
 */
export function decodeText(bytes: Uint8Array): string {
  if (bytes.length === 0) throw new InputError('bytes', 0, 'The file is empty.');
  if (bytes.length > MOST_BYTES) {
    const size = (bytes.length / 1024 / 1024).toFixed(1);
    throw new InputError('bytes', bytes.length, `The file has ${size} MB; at most 24 MB are read. Export one trace to a file, or fewer points a second.`);
  }
  const binary = BINARY_STARTS.find((start) => start.bytes.every((byte, index) => bytes[index] === byte));
  if (binary) throw noText(`The file is ${binary.what}, not text; save the trace as CSV and read that.`);
  const text = decode(bytes);
  const control = /[\u0000-\u0008\u000e-\u001f]/.exec(text);
  if (control) {
    const line = text.slice(0, control.index).split(/\r\n|\r|\n/).length;
    throw noText(`Line ${line} holds bytes that are no text; save the trace as CSV and read that.`);
  }
  return text;
}

function decode(bytes: Uint8Array): string {
  const encoding = utf16Of(bytes);
  if (encoding) return new TextDecoder(encoding).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function utf16Of(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const start = bytes.subarray(0, 400);
  if (start.length < 4) return null;
  const zeros = [0, 0];
  start.forEach((byte, index) => {
    if (byte === 0) zeros[index % 2]! += 1;
  });
  // Digits and Latin letters in UTF-16 have one zero byte each.
  const most = start.length / 2;
  if (zeros[1]! > 0.8 * most && zeros[0] === 0) return 'utf-16le';
  if (zeros[0]! > 0.8 * most && zeros[1] === 0) return 'utf-16be';
  return null;
}

function noText(message: string): InputError {
  return new InputError('bytes', null, message);
}
