import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import { printDocument } from './print-document.ts';
import { reportDocument } from './report-document.ts';

/**
 * The report as a PDF 1.7 file, A4, from its content alone: the same content gives the same bytes.
 * @throws InputError when `preparedAt` is no instant: the file would carry the time of printing instead.
 */
export async function renderReportPdf(content: ReportContent): Promise<Uint8Array> {
  if (Number.isNaN(Date.parse(content.preparedAt))) {
    throw new InputError('preparedAt', content.preparedAt, 'preparedAt must be an ISO 8601 instant such as 2026-03-04T09:12:00.000Z.');
  }
  return printDocument(reportDocument(content));
}
