import { isAbsolute, relative, resolve } from 'node:path';
import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { FONT_FAMILY, fontFiles, fontFolder } from './fonts.ts';

/** A pdfmake document as the bytes of its PDF, the same for the same document. */
export async function printDocument(document: TDocumentDefinitions): Promise<Uint8Array> {
  // A document reads nothing but its typeface.
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => isInside(fontFolder, path));
  pdfmake.setFonts({
    [FONT_FAMILY]: { normal: fontFiles.regular, italics: fontFiles.italic, bold: fontFiles.semibold, bolditalics: fontFiles.semiboldItalic },
  });
  const buffer = await pdfmake.createPdf(document).getBuffer();
  return new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.byteLength);
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, resolve(path));
  return way !== '' && !way.startsWith('..') && !isAbsolute(way);
}
