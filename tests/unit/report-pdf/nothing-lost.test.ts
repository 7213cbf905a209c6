import { expect, it } from 'vitest';
import { renderReportPdf } from '../../../electron/report/report-pdf.ts';
import type { ReportContent } from '../../../shared-lib/report/content.ts';
import { fullReport } from './fixture.ts';

/** Not printed as they stand: instants, ids, choices, and what is drawn. */
const NOT_TEXT = new Set(['preparedAt', 'testedAt', 'at', 'chainHash', 'key', 'bound', 'verdict', 'overall', 'hazard', 'unit', 'strip', 'table', 'x', 'y', 'series', 'bands', 'id']);
/** Up to 20 000 characters in the notebook; the others up to 200. */
const LONG = /\.(remark|reason|voided|notes|flags|shows|value|before|after|cells)\b/;

/** Every text of the content made long, each with a mark of its own at its end. */
function marked(content: ReportContent): { content: ReportContent; marks: Map<string, string> } {
  const marks = new Map<string, string>();
  const go = (value: unknown, path: string): unknown => {
    if (typeof value === 'string') {
      if (value === '') return '';
      const mark = `Zq${marks.size}z`;
      marks.set(mark, path);
      return `${value} ${'word '.repeat(LONG.test(path) ? 600 : 30)}${mark}`;
    }
    if (Array.isArray(value)) return value.map((item, index) => go(item, `${path}[${index}]`));
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [key, NOT_TEXT.has(key) || (key === 'lines' && path.includes('figures')) || (key === 'code' && path.includes('flags')) ? item : go(item, `${path}.${key}`)]),
    );
  };
  return { content: go({ ...content, sections: content.sections.slice(0, 1), appendix: content.appendix.slice(0, 1) }, '') as ReportContent, marks };
}

it('prints every text of a report to its end, however long', async () => {
  const { content, marks } = marked(fullReport);
  const bytes = await renderReportPdf(content);
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  let text = '';
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    text += items.map((item) => ('str' in item ? item.str : '')).join('').replace(/\s/gu, '');
  }
  await document.destroy();
  expect(marks.size).toBeGreaterThan(100);
  // The fixture has one column without any value, which is left out on purpose.
  const lost = [...marks].filter(([mark]) => !text.includes(mark)).map(([, path]) => path);
  expect(lost).toEqual(['.sections[0].columns[5].title']);
});
