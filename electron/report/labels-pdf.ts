import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { bytesIn, MOST_BYTES, scanText, type LabelSize, type SampleLabel } from '../../shared-lib/report/label-sheet.ts';
import { FONT_FAMILY } from './fonts.ts';
import { theme } from './look.ts';
import { printDocument } from './print-document.ts';
import { printable } from './printable.ts';
import { textHeight } from './text-height.ts';

const MM = 72 / 25.4;
/** Of the QR code: the same for every label, so that all are of one size. Only the code of a sample that is longer than it holds takes a larger one. */
const VERSION = 4;

interface Sheet {
  pageMm: [number, number];
  columns: number;
  rows: number;
  /** The room of the QR code. Its dots are whole points, of which 33 go into it. */
  codeMm: number;
  padMm: number;
  textSize: number;
  /** Points between lines. */
  lineGap: number;
  codeSize: number;
}

const sheets: Record<LabelSize, Sheet> = {
  'roll-62x29': { pageMm: [62, 29], columns: 1, rows: 1, codeMm: 24, padMm: 2, textSize: 5.8, lineGap: 0, codeSize: 11 },
  'sheet-24': { pageMm: [210, 297], columns: 3, rows: 8, codeMm: 26, padMm: 4.5, textSize: 6.5, lineGap: 1.2, codeSize: 11 },
  'sheet-8': { pageMm: [210, 297], columns: 2, rows: 4, codeMm: 40, padMm: 9, textSize: 9, lineGap: 1.2, codeSize: 16 },
};

/** Labels of samples with their QR codes: one to a page for a label printer, or sheets of A4 of which `skip` are used up. */
export async function renderLabelsPdf(labels: SampleLabel[], size: LabelSize, skip: number): Promise<Uint8Array> {
  return printDocument(labelsDocument(labels, size, skip));
}

/** The labels as a pdfmake document, the same for the same labels. */
export function labelsDocument(labels: SampleLabel[], size: LabelSize, skip: number): TDocumentDefinitions {
  const sheet = sheets[size];
  const [pageWidth, pageHeight] = sheet.pageMm.map((mm) => mm * MM) as [number, number];
  const [width, height] = [pageWidth / sheet.columns, pageHeight / sheet.rows];
  const perPage = sheet.columns * sheet.rows;
  const used = Math.min(skip, perPage - 1);
  return {
    version: '1.7',
    language: 'en',
    info: { title: `Labels: ${labels.length === 1 ? labels[0]!.code : `${labels.length} samples`}`, creator: 'Laydown', producer: 'Laydown', creationDate: new Date(0) },
    pageSize: { width: pageWidth, height: pageHeight },
    pageMargins: 0,
    defaultStyle: { font: FONT_FAMILY, fontSize: sheet.textSize, color: theme.ink, lineHeight: 1.05 },
    content: labels.map((label, index): Content => {
      const place = (index + used) % perPage;
      const at = { x: (place % sheet.columns) * width, y: Math.floor(place / sheet.columns) * height };
      return { stack: [labelPart(label, sheet, at, width)], ...(place === 0 && index > 0 ? { pageBreak: 'before' as const } : {}) };
    }),
  };
}

function labelPart(original: SampleLabel, { codeMm, padMm, textSize, lineGap, codeSize }: Sheet, at: { x: number; y: number }, width: number): Content {
  const { content: label } = printable(original);
  const [side, pad] = [codeMm * MM, padMm * MM];
  const textWidth = width - side - 2.5 * pad;
  const scanned = scanText(original);
  const size = fitting(label.code, textWidth, codeSize, textSize * 1.25);
  const lines = [label.product, named('Job', label.job), named('Roll', label.roll), label.position, label.retainedUntil && `Keep until ${label.retainedUntil}`, label.notebook].filter(Boolean);
  return {
    absolutePosition: { x: at.x + pad, y: at.y + pad },
    table: {
      widths: ['auto', textWidth],
      body: [
        [
          { qr: scanned, fit: side, eccLevel: 'M', foreground: '#000000', ...(bytesIn(scanned) <= MOST_BYTES ? { version: VERSION } : {}) },
          {
            stack: [
              { text: shortened(label.code, textWidth, size, 2), bold: true, fontSize: size, margin: [0, 0, 0, 1] },
              ...lines.map((text, index) => ({ text: shortened(text, textWidth, textSize, 1), margin: [0, 0, 0, lineGap] as [number, number, number, number], color: index === lines.length - 1 ? theme.quiet : theme.ink })),
            ],
          },
        ],
      ],
    },
    layout: { hLineWidth: () => 0, vLineWidth: () => 0, paddingLeft: (column) => (column === 0 ? 0 : pad / 2), paddingRight: (column) => (column === 0 ? pad / 2 : 0), paddingTop: () => 0, paddingBottom: () => 0 },
  };
}

/** 'Roll R3'; as it stands where the word is typed with it, 'roll 3'. */
function named(word: string, text: string): string {
  return text === '' || text.toLowerCase().startsWith(word.toLowerCase()) ? text : `${word} ${text}`;
}

/** Of so many lines, on the safe side. */
const heightOf = (lines: number) => lines * 1.35 + 0.01;

/** The largest size, from `largest` down to `smallest`, in which the text takes one line; the smallest where none does. */
function fitting(text: string, width: number, largest: number, smallest: number): number {
  let size = largest;
  while (size > smallest && textHeight(text, width, size) > heightOf(1) * size) size -= 0.5;
  return size;
}

/** Cut to so many lines: a label has no more room, and its QR code holds the rest. */
function shortened(text: string, width: number, size: number, lines: number): string {
  let short = text;
  while (short.length > 1 && textHeight(short, width, size) > heightOf(lines) * size) short = `${short.slice(0, -2).trimEnd()}…`;
  return short;
}
