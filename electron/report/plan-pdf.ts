import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { COMMON_PRACTICE } from '../../shared-lib/plan/stress-rule.ts';
import type { PlanSheet } from '../../shared-lib/report/plan-sheet.ts';
import { FONT_FAMILY } from './fonts.ts';
import { keyValues } from './key-values.ts';
import { ruledLayout, size, styles, theme } from './look.ts';
import { printDocument } from './print-document.ts';
import { printable } from './printable.ts';

/** Narrower than a report's: a plan is to stand on one page. */
const margin = { side: 36, top: 30, bottom: 34 };
const dense = 7;
const quiet = { fontSize: dense, color: theme.quiet };

/** A version of a plan on A4: what is tested, why, how many, when, and against which limits. One page unless it is a long one. */
export async function renderPlanPdf(sheet: PlanSheet): Promise<Uint8Array> {
  return printDocument(planDocument(sheet));
}

/** The plan as a pdfmake document, the same for the same sheet. */
function planDocument(original: PlanSheet): TDocumentDefinitions {
  const { content: sheet, missing } = printable(original);
  return {
    version: '1.7',
    language: 'en',
    displayTitle: true,
    info: { title: `Plan: ${sheet.title}`, author: sheet.laboratory, creator: 'Laydown', producer: 'Laydown', creationDate: new Date(sheet.writtenAt) },
    pageSize: 'A4',
    pageMargins: [margin.side, margin.top, margin.side, margin.bottom],
    defaultStyle: { font: FONT_FAMILY, fontSize: size.body, color: theme.ink, lineHeight: 0.97 },
    styles,
    footer: (number, count) => ({
      margin: [margin.side, 12, margin.side, 0],
      columns: [
        { text: 'Test plan', style: 'quiet' },
        { text: `record ${sheet.record.chainHash.slice(0, 16)}`, style: 'quiet', alignment: 'center' },
        { text: `page ${number} of ${count}`, style: 'quiet', alignment: 'right' },
      ],
    }),
    content: [
      { text: sheet.laboratory, style: 'laboratory', margin: [0, 0, 0, 3] },
      { text: sheet.title, style: 'title', fontSize: 16, margin: [0, 0, 0, 6] },
      { columns: halves(sheet.facts).map((facts) => keyValues(facts.map(({ label, text }) => [label, text]), 52)), columnGap: 16 },
      keyValues([['Endures', [{ text: sheet.stresses.join('; '), fontSize: size.small }]]], 52),
      linesTable(sheet),
      ...closing(sheet, missing),
    ],
  };
}

function halves<Item>(items: Item[]): Item[][] {
  const middle = Math.ceil(items.length / 2);
  return [items.slice(0, middle), items.slice(middle)];
}

function linesTable({ lines }: PlanSheet): Content {
  const head = ['Test', 'When', 'How many', `Limit, and who sets it (* ${COMMON_PRACTICE})`, 'Why'].map((text): TableCell => ({ text, style: 'head' }));
  const isFirst = lines.map(({ method }, index) => lines.findIndex((line) => line.method === method) === index);
  const rows = lines.map(({ method, standards, when, preparation, howMany, limits, reasons }, index): TableCell[] => [
    // Its standards stand beside a method once.
    { text: [{ text: method, bold: true }, ...(standards && isFirst[index] ? [{ text: `  ${standards}`, ...quiet }] : [])], fontSize: dense },
    { text: [{ text: when }, ...(preparation ? [{ text: `, ${preparation}`, ...quiet }] : [])], fontSize: dense },
    { text: howMany, fontSize: dense },
    limits.length > 0 ? { stack: limits.map((text) => ({ text: text.replace(`(${COMMON_PRACTICE})`, '*') })), fontSize: dense } : { text: 'none', ...quiet },
    { text: reasons.join(' '), fontSize: dense },
  ]);
  return {
    margin: [0, 4, 0, 4],
    table: { headerRows: 1, dontBreakRows: true, widths: [112, 98, 48, 92, '*'], body: [head, ...rows] },
    layout: { ...ruledLayout(1), paddingTop: () => 0.8, paddingBottom: () => 0.8 },
  };
}

function closing({ dropped, hazards, notes }: PlanSheet, missing: string[]): Content[] {
  const cautions = hazards.map(({ hazard, methods }) => `${hazard}: ${methods}`).join(' · ');
  return [
    ...dropped.map(({ method, reason }) => paragraph(`${method}: ${reason}`, 'Not made')),
    ...(cautions ? [paragraph(`${cautions}. What to heed stands on each bench sheet; safety data sheets, local codes and trained staff come first.`, 'Hazards')] : []),
    ...notes.map((note) => paragraph(note)),
    ...(missing.length > 0 ? [paragraph(`Characters that the typeface lacks are printed as □: ${missing.join(', ')}.`)] : []),
  ];
}

function paragraph(text: string, label = ''): Content {
  return { text: [...(label ? [{ text: `${label}  `, bold: true }] : []), { text }], fontSize: dense, margin: [0, 0, 0, 2.5] };
}
