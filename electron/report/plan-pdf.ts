import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import type { PlanSheet } from '../../shared-lib/report/plan-sheet.ts';
import { FONT_FAMILY } from './fonts.ts';
import { keyValues } from './key-values.ts';
import { contentWidth, page, ruledLayout, size, styles, theme } from './look.ts';
import { printDocument } from './print-document.ts';
import { printable } from './printable.ts';

/** A version of a plan on A4: what is tested, why, how many, when, and against which limits. One page unless it is a long one. */
export async function renderPlanPdf(sheet: PlanSheet): Promise<Uint8Array> {
  return printDocument(planDocument(sheet));
}

/** The plan as a pdfmake document, the same for the same sheet. */
export function planDocument(original: PlanSheet): TDocumentDefinitions {
  const { content: sheet, missing } = printable(original);
  return {
    version: '1.7',
    language: 'en',
    displayTitle: true,
    info: { title: `Plan: ${sheet.title}`, author: sheet.laboratory, creator: 'Laydown', producer: 'Laydown', creationDate: new Date(sheet.writtenAt) },
    pageSize: 'A4',
    pageMargins: [page.left, 46, page.right, 46],
    defaultStyle: { font: FONT_FAMILY, fontSize: size.body, color: theme.ink, lineHeight: 1.05 },
    styles,
    footer: (number, count) => ({
      margin: [page.left, 14, page.right, 0],
      columns: [
        { text: 'Test plan', style: 'quiet' },
        { text: `record ${sheet.record.chainHash.slice(0, 16)}`, style: 'quiet', alignment: 'center' },
        { text: `page ${number} of ${count}`, style: 'quiet', alignment: 'right' },
      ],
    }),
    content: [
      { text: sheet.laboratory, style: 'laboratory', margin: [0, 0, 0, 4] },
      { text: sheet.title, style: 'title', fontSize: 17, margin: [0, 0, 0, 8] },
      keyValues([...sheet.facts.map(({ label, text }): [string, string] => [label, text]), ['Must endure', sheet.stresses.join('; ')]], 62),
      linesTable(sheet),
      ...closing(sheet, missing),
    ],
  };
}

function linesTable({ lines }: PlanSheet): Content {
  const head = ['Test', 'When', 'How many', 'Limit and who sets it', 'Why'].map((text): TableCell => ({ text, style: 'head' }));
  const rows = lines.map(({ method, standards, when, preparation, howMany, limits, reasons }): TableCell[] => [
    { stack: [{ text: method, bold: true }, ...(standards ? [{ text: standards, style: 'quiet' }] : [])], fontSize: size.small },
    { stack: [{ text: when }, ...(preparation ? [{ text: preparation, style: 'quiet' }] : [])], fontSize: size.small },
    { text: howMany, fontSize: size.small },
    { stack: limits.length > 0 ? limits.map((text) => ({ text })) : [{ text: 'none', style: 'quiet' }], fontSize: size.small },
    { text: reasons.join(' '), fontSize: size.small },
  ]);
  return {
    margin: [0, 8, 0, 8],
    table: { headerRows: 1, dontBreakRows: true, widths: [96, 84, 44, 112, '*'], body: [head, ...rows] },
    layout: { ...ruledLayout(1), paddingTop: () => 1.6, paddingBottom: () => 1.6 },
  };
}

function closing({ dropped, cautions, notes }: PlanSheet, missing: string[]): Content[] {
  const paragraph = (text: string, label = ''): Content => ({ text: [...(label ? [{ text: `${label}  `, bold: true }] : []), { text }], fontSize: size.small, margin: [0, 0, 0, 3] });
  return [
    ...dropped.map(({ method, reason }) => paragraph(`${method}: ${reason}`, 'Not made')),
    ...cautions.map(({ text, methods }) => paragraph(`${text} (${methods})`, 'Caution')),
    { canvas: [{ type: 'line', x1: 0, y1: 2, x2: contentWidth, y2: 2, lineWidth: 0.4, lineColor: theme.rule }], margin: [0, 0, 0, 4] },
    ...notes.map((note) => paragraph(note)),
    ...(missing.length > 0 ? [paragraph(`Characters that the typeface lacks are printed as □: ${missing.join(', ')}.`)] : []),
  ];
}
