import { InputError } from '../../shared-lib/calculation/input-error.ts';

/** The notebook is held in memory and written whole: larger files would make every save slow. */
export const LARGEST_FILE = 24_000_000;

/**
 * The bytes of a file that came as base64.
 * @throws InputError on `bytes` when it is no base64, or more than 24 MB
 */
export function decodeFile(base64: string): Uint8Array {
  if (!/^[A-Za-z0-9+/]*={0,2}$/.test(base64) || base64.length % 4 !== 0) throw new InputError('bytes', null, 'The file did not arrive whole; choose it again.');
  const bytes = Buffer.from(base64, 'base64');
  if (bytes.length > LARGEST_FILE) {
    throw new InputError('bytes', bytes.length, `This file has ${(Math.ceil(bytes.length / 1e5) / 10).toFixed(1)} MB; at most ${LARGEST_FILE / 1e6} MB go into a notebook. Keep it elsewhere and attach a smaller copy.`);
  }
  return bytes;
}
