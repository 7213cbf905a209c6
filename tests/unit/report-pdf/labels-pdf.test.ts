import jsqr from 'jsqr';
import { describe, expect, it } from 'vitest';
import { labelsDocument, renderLabelsPdf } from '../../../electron/report/labels-pdf.ts';
import { printDocument } from '../../../electron/report/print-document.ts';
import { labelSizes, readLabel, scanText, type SampleLabel } from '../../../shared-lib/report/label-sheet.ts';

const label: SampleLabel = { code: 'Q-26-004', product: 'dumpling pouch 600 g', job: 'J-4418', roll: 'roll 1', position: '350 mm across, 400 m along', retainedUntil: '2026-11-28', notebook: 'Film and laminate tests 2026' };
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

/** Pixels from the first to the last black column. */
function codeSide({ data, width }: { data: Uint8ClampedArray; width: number }): number {
  let [first, last] = [width, -1];
  for (let at = 0; at < data.length; at += 4) {
    if (data[at] !== 0) continue;
    const column = (at / 4) % width;
    if (column < first) first = column;
    if (column > last) last = column;
  }
  return last - first + 1;
}

describe('labels', () => {
  it.each(labelSizes)('of size %s carry a code that a reader reads back', async (size) => {
    const { data, width, height } = await painted(labelsDocument([label], size, 0));
    const read = jsqr(data, width, height)?.data ?? '';
    expect(read).toBe('Q-26-004 | dumpling pouch 600 g | job J-4418 | roll 1');
    expect(readLabel(read).code).toBe('Q-26-004');
  });

  // 20 mm: common practice for codes that are read at arm's length; 33 modules on a side are version 4 (ISO/IEC 18004, table 1).
  it.each(labelSizes)('of size %s have one code of at least 20 mm, however much is said of the sample', async (size) => {
    const sides = await Promise.all([label, { ...label, code: 'S-1', product: '', job: '', roll: '' }, { ...label, product: 'p'.repeat(190) }].map(async (one) => codeSide(await painted(labelsDocument([one], size, 0)))));
    expect(new Set(sides).size).toBe(1);
    expect((sides[0]! / PIXELS_PER_POINT / 72) * 25.4).toBeGreaterThanOrEqual(20);
    expect((sides[0]! / PIXELS_PER_POINT) % 33).toBe(0);
  });

  it('say until when the sample is kept', async () => {
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const textOf = async (one: SampleLabel) => (await (await (await getDocument({ data: await renderLabelsPdf([one], 'roll-62x29', 0) }).promise).getPage(1)).getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' ').replace(/\s+/g, ' ');
    expect(await textOf(label)).toContain('Keep until 2026-11-28');
    expect(await textOf({ ...label, retainedUntil: '' })).not.toContain('Keep until');
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
  it('is the sample’s code first, then what the code has room for', () => {
    const long = scanText({ ...label, code: 'C'.repeat(41), product: 'p'.repeat(100) });
    // The product has no room; what is shorter still goes in: 41 + 3 + 10 bytes, and 9 more for the roll are one too many.
    expect(long).toBe(`${'C'.repeat(41)} | job J-4418`);
    expect(readLabel(long).code).toBe('C'.repeat(41));
    // 'µ' takes two bytes: 62 of them are 31.
    expect(scanText({ code: 'µ'.repeat(29), product: '', job: '', roll: 'r' })).toBe(`${'µ'.repeat(29)} | r`);
    expect(scanText({ code: 'µ'.repeat(29), product: '', job: '', roll: 'rr' })).toBe('µ'.repeat(29));
  });

  it('leaves what was typed by hand as it is', () => {
    expect(readLabel('Q-26-004')).toEqual({ code: 'Q-26-004', rest: [] });
    expect(readLabel('roll 1|2')).toEqual({ code: 'roll 1|2', rest: [] });
  });
});
