import { isAbsolute, relative, resolve } from 'node:path';
import pdfmake from 'pdfmake';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { FONT_FAMILY, fontFiles, fontFolder } from './fonts.ts';
import { reportDocument } from './report-document.ts';

/**
 * The report as a PDF 1.7 file, A4, from its content alone: the same content gives the same bytes.
 * @throws InputError when `preparedAt` is no instant: the file would carry the time of printing instead.
 */
export async function renderReportPdf(content: ReportContent): Promise<Uint8Array> {
  if (Number.isNaN(Date.parse(content.preparedAt))) {
    throw new InputError('preparedAt', content.preparedAt, 'preparedAt must be an ISO 8601 instant such as 2026-03-04T09:12:00.000Z.');
  }
  // A report reads nothing but its typeface.
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => isInside(fontFolder, path));
  pdfmake.setFonts({
    [FONT_FAMILY]: { normal: fontFiles.regular, italics: fontFiles.italic, bold: fontFiles.semibold, bolditalics: fontFiles.semiboldItalic },
  });
  const buffer = await pdfmake.createPdf(reportDocument(content)).getBuffer();
  return new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.byteLength);
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, resolve(path));
  return way !== '' && !way.startsWith('..') && !isAbsolute(way);
}
