import path from 'node:path';
import { pictureHeader } from './picture-header.ts';

const byExtension: Record<string, string> = {
  '.csv': 'text/csv',
  '.txt': 'text/plain',
  '.tsv': 'text/tab-separated-values',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

/** What a file is: pictures and PDF by their content, whatever they are called; the rest by the ending of the name. */
export function mediaTypeOf(name: string, bytes: Uint8Array): string {
  const picture = pictureHeader(bytes);
  if (picture) return picture.mediaType;
  if (Buffer.from(bytes.subarray(0, 5)).toString('latin1') === '%PDF-') return 'application/pdf';
  return byExtension[path.extname(name).toLowerCase()] ?? 'application/octet-stream';
}
