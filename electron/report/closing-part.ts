import type { Content } from 'pdfmake/interfaces.js';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import { contentWidth, size, theme } from './look.ts';
import { MISSING } from './printable.ts';

const MOST_LISTED = 40;

/** The end of the report: room to sign, the state of the record it was made from, and what could not be printed. */
export function closingPart(content: ReportContent, missing: string[]): Content[] {
  const { entries, chainHash } = content.record;
  return [
    ...signatures(content.signatures),
    {
      unbreakable: true,
      stack: [
        { text: 'The record', style: 'heading', outline: true, margin: [0, 26, 0, 4] },
        { text: `Made from the first ${entries} ${entries === 1 ? 'entry' : 'entries'} of the notebook’s record. The hash of the last of them stands for all before it:`, fontSize: size.body },
        { text: chainHash, fontSize: size.body, bold: true, margin: [0, 4, 0, 4] },
        { text: 'Whoever holds the notebook can check this report against it by verifying the record and comparing the hash.', style: 'quiet' },
        ...(missing.length > 0 ? [{ text: missingText(missing), style: 'quiet', margin: [0, 6, 0, 0] as [number, number, number, number] }] : []),
      ],
    },
  ];
}

function missingText(missing: string[]): string {
  const listed = missing.slice(0, MOST_LISTED).join(', ');
  const more = missing.length > MOST_LISTED ? ` and ${missing.length - MOST_LISTED} more` : '';
  return `Characters that the typeface of this report lacks are printed as ${MISSING} (${listed}${more}); the record holds them as they were typed.`;
}

const PER_ROW = 3;
const GAP = 22;

function signatures(list: ReportContent['signatures']): Content[] {
  if (list.length === 0) return [];
  const width = (contentWidth - GAP * (PER_ROW - 1)) / PER_ROW;
  const rows = Array.from({ length: Math.ceil(list.length / PER_ROW) }, (_, index) => list.slice(index * PER_ROW, (index + 1) * PER_ROW));
  return rows.map((row, index) => ({
    unbreakable: true,
    stack: [
      ...(index === 0 ? [{ text: 'Signatures', style: 'heading', outline: true } as Content] : []),
      { columns: row.map((signature) => place(signature, width)), columnGap: GAP, margin: [0, 44, 0, 0] },
    ],
    margin: [0, index === 0 ? 28 : 0, 0, 0],
  }));
}

function place({ role, name }: { role: string; name: string }, width: number): Content & { width: number } {
  return {
    width,
    stack: [
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: width, y2: 0, lineWidth: 0.6, lineColor: theme.ink }] },
      { text: name, fontSize: size.body, margin: [0, 3, 0, 0] },
      { text: role, style: 'quiet' },
      { text: 'Date', style: 'quiet', margin: [0, 8, 0, 0] },
    ],
  };
}
