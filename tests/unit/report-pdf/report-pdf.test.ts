import { beforeAll, describe, expect, it } from 'vitest';
import { renderReportPdf } from '../../../electron/report/report-pdf.ts';
import { reportDocument } from '../../../electron/report/report-document.ts';
import type { ReportContent } from '../../../shared-lib/report/content.ts';
import { fullReport } from './fixture.ts';

interface ReadBack {
  /** Text of each page without blanks: they are not kept where a line may break. */
  pages: string[];
  text: string;
  info: Record<string, unknown>;
}

const solid = (text: string) => text.replace(/[\s\u200b]/gu, '');

/** Reads the PDF with another program than the one that wrote it. */
async function readBack(bytes: Uint8Array): Promise<ReadBack> {
  // Loaded late: it brings a global Path2D of its own canvas, which Chart.js would take up.
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    pages.push(solid(items.map((item) => ('str' in item ? item.str : '')).join('')));
  }
  const { info } = await document.getMetadata();
  await document.destroy();
  return { pages, text: pages.join(''), info: info as Record<string, unknown> };
}

const render = async (content: ReportContent) => readBack(await renderReportPdf(content));

const bare: ReportContent = {
  ...fullReport,
  number: '',
  recipient: '',
  remark: '',
  replaces: null,
  summary: [],
  overall: 'no limit',
  sections: [],
  appendix: [],
  signatures: [],
};

describe('renderReportPdf', () => {
  let full: ReadBack;
  beforeAll(async () => {
    full = await render(fullReport);
  });

  it('is PDF 1.7 with title, language and the day of preparation', () => {
    expect(full.info).toMatchObject({ PDFFormatVersion: '1.7', Language: 'en', Title: `${fullReport.number} · ${fullReport.title}`, CreationDate: 'D:20260304091200Z' });
  });

  it('gives the same bytes for the same content', async () => {
    const [first, second] = [await renderReportPdf(fullReport), await renderReportPdf(structuredClone(fullReport))];
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
  });

  it('tells on the first page who, what and the overall verdict', () => {
    for (const part of ['Quillmere Flexibles', fullReport.title, 'QF-2026-014', 'Tamarind, ink development', 'Abena Quist', '2026-03-04 09:12 UTC', 'QF-2026-012: lot number of the film corrected', 'Overall verdict falls short', 'meets 5 · falls short 1 · undecided 1']) {
      expect(full.pages[0]).toContain(solid(part));
    }
  });

  it('prints value, unit, interval, n, limit and verdict of each summary line', () => {
    for (const part of ['40.4 mN/m 39.6 to 41.2 6 ≥ 38 meets', '−36.2 % −36.9 to −35.5 6 ≥ 38 falls short', 'between 38 and 40 mN/m 1 ≥ 36 meets']) {
      expect(full.pages[0]).toContain(solid(part));
    }
  });

  it('prints the signs of the trade', () => {
    // The micro sign and the Greek mu share one glyph; a reader gets the letter back.
    for (const glyph of 'μ₂°≤≥✓Δλ×±−²₀') expect(full.text, glyph).toContain(glyph);
  });

  it('names method, standards, versions, conditions, finding, notes, sources and cautions of each test', () => {
    for (const part of ['1 Q-114 · Test fluids', 'ASTM D2578 · ISO 8296', 'version 1.2', 'wetting-fluid, version 1.0', '23.1 °C', 'lot OV-3311', 'R3 and R7 stay below 38 mN/m.', 'The interval comes from the likelihood', 'ISO 8296:2003, clause 8', 'Test fluids harm the unborn child', 'drive side A higher fluid (40 mN/m) held', 'Share (%)', '97.3']) {
      expect(full.text).toContain(solid(part));
    }
    // A column without any value is not printed.
    expect(full.text).not.toContain('Unused');
  });

  it('prints every reading, voided rows with the reason, corrections with what stood before', () => {
    expect(full.text).toContain(solid('3 drive side 30 0.5 voided: fingerprint on the film'));
    expect(full.text).toContain(solid('remark: Swab changed before this reading.'));
    expect(full.text).toContain(solid('row 2, Held 44 40 bottle misread Imke Rasmund 2026-03-03 08:52 UTC'));
    for (let row = 1; row <= 200; row++) expect(full.text).toMatch(new RegExp(`${row}0\\.[67]\\d00\\.4\\d`));
    const struck = JSON.stringify(reportDocument(fullReport).content).match(/"decoration":"lineThrough"/g);
    // Row 3 of the first table (5 cells) and row 5 of the second (16 cells).
    expect(struck).toHaveLength(5 + 16);
  });

  it('numbers the pages and carries report number and record on each', () => {
    full.pages.forEach((page, index) => {
      expect(page).toContain(solid(`page ${index + 1} of ${full.pages.length}`));
      expect(page).toContain(solid('Report QF-2026-014'));
      expect(page).toContain(solid('record 9f3c2a7be01d4c55'));
      if (index > 0) expect(page).toContain(solid(fullReport.title));
    });
  });

  it('ends with room to sign, the whole hash and what could not be printed', () => {
    const last = full.pages.at(-1)!;
    expect(last).toContain(solid('1482 entries'));
    expect(last).toContain(fullReport.record.chainHash);
    for (const { role } of fullReport.signatures) expect(full.text).toContain(solid(role));
    expect(full.text).toContain(solid('printed by □ □□.'));
    expect(last).toContain('U+524D');
  });

  it('refers to the section that has the same cautions or sources, and prints others', () => {
    expect(full.text).toContain(solid('Sources as in section 1.'));
    expect(full.text.split(solid('ASTM D2578-17, clause 9'))).toHaveLength(2);
    for (const caution of ['Cut away from the hand.', 'Do not look into the lamp.']) expect(full.text).toContain(solid(caution));
  });

  it('opens each section on one page, down to its last property', async () => {
    const [section] = fullReport.sections;
    const { pages } = await render({ ...bare, sections: Array.from({ length: 6 }, (_, index) => ({ ...section!, heading: `Opening ${index}`, remark: 'word '.repeat(90 * index) })) });
    for (let index = 0; index < 6; index++) {
      const page = pages.find((text) => text.includes(solid(`${index + 1} Opening ${index}`)))!;
      const opening = page.slice(page.indexOf(solid(`Opening ${index}`)));
      expect(opening).toContain(solid('Spread 1.25 mN/m'));
    }
  });

  it('gives the numbers of a column the same decimals', async () => {
    const { text } = await render({ ...bare, sections: [{ ...fullReport.sections[0]!, columns: [{ key: 'name', title: 'Name' }, { key: 'share', title: 'Share' }], table: [{ name: 'alpha', share: 0.8333333 }, { name: 'beta', share: 0 }, { name: 'gamma', share: null }] }] });
    expect(text).toContain('alpha0.8333beta0.0000gamma—');
  });

  it('says of a draft that it is one, and holds a report without tests', async () => {
    const draft = await render(bare);
    expect(draft.pages).toHaveLength(1);
    expect(draft.text).toContain(solid('Draft, not issued'));
    expect(draft.text).toContain(solid('No limit is set'));
    expect(draft.text).not.toContain(solid('Characters that the typeface'));
  });

  it('prints 10 000 characters of remark, with and without blanks, to the last one', async () => {
    const section = fullReport.sections[0]!;
    const long = await render({
      ...bare,
      sections: [{ ...section, remark: `${'word '.repeat(2000)}END-A` }],
      appendix: [{ ...fullReport.appendix[0]!, rows: [{ cells: ['1', `${'x'.repeat(10_000)}END-B`, '1', '2', '3'], voided: '', remark: `${'y '.repeat(5000)}END-C` }] }],
    });
    for (const end of ['END-A', 'END-B', 'END-C']) expect(long.text).toContain(end);
    expect(long.text.match(/x{20,}/g)!.join('')).toHaveLength(10_000);
    expect(long.text.match(/word/g)).toHaveLength(2000);
    expect(long.text.match(/y{20,}/g)!.join('')).toHaveLength(5000);
  });

  it('refuses a content without an instant of preparation', async () => {
    await expect(renderReportPdf({ ...bare, preparedAt: 'yesterday' })).rejects.toMatchObject({ field: 'preparedAt' });
  });
});
