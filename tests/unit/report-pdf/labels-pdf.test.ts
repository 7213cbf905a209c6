import jsqr from 'jsqr';
import { describe, expect, it } from 'vitest';
import { labelsDocument, renderLabelsPdf } from '../../../electron/report/labels-pdf.ts';
import { printDocument } from '../../../electron/report/print-document.ts';
import { labelSizes, readLabel, scanText, type SampleLabel } from '../../../shared-lib/report/label-sheet.ts';

const label: SampleLabel = { code: 'Q-26-004', product: 'dumpling pouch 600 g', job: 'J-4418', roll: 'roll 1', position: '350 mm across, 400 m along', notebook: 'Film and laminate tests 2026' };
const PIXELS_PER_POINT = 3;

/** Black rectangles of the first page painted on white, from the PDF's own drawing operators (ISO 32000-1, 8.5.2.1: `x y w h re`, then the colour, then `f`). */
async function painted(document: ReturnType<typeof labelsDocument>): Promise<{ data: Uint8ClampedArray; width: number; height: number }> {
  const pdf = Buffer.from(await printDocument({ ...document, compress: false })).toString('latin1');
  const [, pageWidth, pageHeight] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
  const [width, height] = [Number(pageWidth), Number(pageHeight)].map((points) => Math.ceil(points * PIXELS_PER_POINT)) as [number, number];
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  const stream = pdf.slice(pdf.indexOf('stream'), pdf.indexOf('endstream'));
  let rectangle: RegExpExecArray | null = null;
  let isBlack = false;
  for (const line of stream.split('\n')) {
    if (line.endsWith(' scn')) isBlack = line === '0 0 0 scn';
    rectangle = /^(-?[\d.]+) (-?[\d.]+) ([\d.]+) ([\d.]+) re$/.exec(line) ?? rectangle;
    if (line !== 'f' || !rectangle || !isBlack) continue;
    const [x, y, w, h] = rectangle.slice(1).map((part) => Math.round(Number(part) * PIXELS_PER_POINT)) as [number, number, number, number];
    for (let row = y; row < y + h; row++) for (let column = x; column < x + w; column++) data.set([0, 0, 0], (row * width + column) * 4);
  }
  return { data, width, height };
}

describe('labels', () => {
  it.each(labelSizes)('of size %s carry a code that a reader reads back', async (size) => {
    const { data, width, height } = await painted(labelsDocument([label], size, 0));
    const read = jsqr(data, width, height)?.data ?? '';
    expect(read).toBe('Q-26-004 | dumpling pouch 600 g | job J-4418 | roll 1 | 350 mm across, 400 m along | Film and laminate tests 2026');
    expect(readLabel(read).code).toBe('Q-26-004');
  });

  it.each([
    ['roll-62x29', 3, 0, 3],
    ['sheet-24', 24, 0, 1],
    ['sheet-24', 24, 1, 2],
    ['sheet-8', 9, 7, 2],
  ] as const)('of size %s: %i, with %i places used up, take %i pages', async (size, count, skip, pages) => {
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const bytes = await renderLabelsPdf(Array.from({ length: count }, (_, index) => ({ ...label, code: `Q-${index + 1}` })), size, skip);
    const pdf = await getDocument({ data: bytes }).promise;
    expect(pdf.numPages).toBe(pages);
    const texts: string[] = [];
    for (let number = 1; number <= pages; number++) texts.push(...(await (await pdf.getPage(number)).getTextContent()).items.map((item) => ('str' in item ? item.str : '')));
    for (let index = 1; index <= count; index++) expect(texts).toContain(`Q-${index}`);
  });
});

it('stay on their page, however much is to be said', async () => {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const wordy = Object.fromEntries(Object.keys(label).map((key) => [key, `${key} ${'very long '.repeat(19)}`])) as unknown as SampleLabel;
  for (const size of labelSizes) {
    const pdf = await getDocument({ data: await renderLabelsPdf([wordy], size, 0) }).promise;
    expect(pdf.numPages).toBe(1);
    const { items } = await (await pdf.getPage(1)).getTextContent();
    expect(items.map((item) => ('str' in item ? item.str : '')).join(' ').replace(/\s+/g, ' ')).toMatch(/code very long .*product very long .*job very long .*roll very long .*position very long .*notebook very long/i);
  }
});

describe('what a code holds', () => {
  it('is the sample’s code first, and no more than a search takes', () => {
    const long = scanText({ ...label, code: 'C'.repeat(150), product: 'p'.repeat(100) });
    expect(long.length).toBeLessThanOrEqual(200);
    expect(readLabel(long).code).toBe('C'.repeat(150));
    // The product has no room; what is shorter still goes in.
    expect(long).toContain('job J-4418');
  });

  it('leaves what was typed by hand as it is', () => {
    expect(readLabel('Q-26-004')).toEqual({ code: 'Q-26-004', rest: [] });
    expect(readLabel('roll 1|2')).toEqual({ code: 'roll 1|2', rest: [] });
  });
});
