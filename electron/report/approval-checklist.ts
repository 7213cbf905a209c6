import type { Content, ContentText, TableCell } from 'pdfmake/interfaces.js';
import type { ChecklistWord } from '../../shared-lib/figure/checklist-mark.ts';
import type { ApprovalLine, EarlierResult } from '../../shared-lib/notebook/approval-views.ts';
import type { PropertyLine } from '../../shared-lib/notebook/views.ts';
import { checklistText } from './checklist-text.ts';
import { instantText, ruledLayout, size, theme } from './look.ts';
import { verdictText } from './verdict-text.ts';

/** Small and close: twenty-five lines of two rows each go on the page beside its signature. */
const FONT = 7;
/** Test, result, n, limit, verdict, in points. */
const WIDTHS = [188, '*', 14, 84, 60];
const EMPTY: TableCell = { text: '' };

/** The checklist as a table: each property of a linked result has a row, an observation one, a waiver one below its line. */
export function approvalChecklist(checklist: ApprovalLine[]): Content {
  const head = ['Test or observation', 'Result', 'n', 'Limit', 'Verdict'].map((text): TableCell => ({ text, style: 'head', fontSize: FONT }));
  return {
    margin: [0, 5, 0, 5],
    fontSize: FONT,
    lineHeight: 0.92,
    table: { headerRows: 1, dontBreakRows: true, widths: WIDTHS, body: [head, ...checklist.flatMap(lineRows)] },
    layout: { ...ruledLayout(1), paddingTop: () => 0.8, paddingBottom: () => 0.8 },
  };
}

function lineRows(line: ApprovalLine, index: number): TableCell[][] {
  const rows = line.result ? resultRows(line, index + 1, line.result) : [observationRow(line, index + 1)];
  // What nobody has seen and somebody waived is one row: 'open' beside it would say something else.
  if (line.waiver?.holds && (line.result || line.observation)) rows.push(waiverRow(line.waiver));
  for (const earlier of line.earlier ?? []) rows.push(noteRow('Linked before', earlierText(earlier)));
  if (line.tooFew) rows.push([EMPTY, { text: [{ text: 'Too few', bold: true }, ` ${line.tooFew}`], colSpan: 3 }, EMPTY, EMPTY, checklistText('too few', FONT)]);
  // One rule below each line, none inside it.
  return rows.map((row, at) => row.map((cell) => ({ ...(cell as ContentText), border: [false, at === 0, false, at === rows.length - 1] }) as TableCell));
}

function resultRows(line: ApprovalLine, number: number, { properties, sampleCode, roll, finishedAt, doubts }: NonNullable<ApprovalLine['result']>): TableCell[][] {
  const results = properties.map((property, at): TableCell[] => [
    at === 0 ? titleCell(line, number, `${sampleText({ sampleCode, roll })}, finished ${finishedAt.slice(0, 10)}`) : EMPTY,
    { text: [`${property.title} `, { text: property.text, bold: true }, ...(property.intervalText ? [{ text: ` (${property.intervalText})`, color: theme.quiet }] : [])] },
    { text: property.n > 0 ? String(property.n) : '', alignment: 'right' },
    limitCell(property),
    verdictText(property.verdict.verdict, FONT),
  ]);
  return [...results, ...doubts.map((doubt) => noteRow('Flag', doubt))];
}

function noteRow(label: string, text: string): TableCell[] {
  return [EMPTY, { text: [{ text: label, bold: true }, ` ${text}`], colSpan: 4 }, EMPTY, EMPTY, EMPTY];
}

function earlierText({ text, verdict, finishedAt, ...sample }: EarlierResult): string {
  return `${text}: ${verdict}, on ${sampleText(sample)}, ${finishedAt ? `finished ${finishedAt.slice(0, 10)}` : 'not finished any more'}`;
}

function sampleText({ sampleCode, roll }: { sampleCode: string; roll?: string | undefined }): string {
  return roll ? `${sampleCode} (${roll})` : sampleCode;
}

function limitCell({ limitText, verdict }: PropertyLine): TableCell {
  const source = verdict.limit?.source;
  return { text: [limitText || 'none', ...(source ? [{ text: ` (${source})`, color: theme.quiet }] : [])] };
}

function observationRow(line: ApprovalLine, number: number): TableCell[] {
  const { observation, state, limitTexts, waiver } = line;
  const seen = observation ? `Seen by ${observation.name}${observation.role ? `, ${observation.role}` : ''}, ${instantText(observation.at)}${observation.remark ? `: ${observation.remark}` : ''}` : 'Not tested';
  const asked = limitTexts.length > 0 ? [{ text: ` (asked for: ${limitTexts.join('; ')})`, color: theme.quiet }] : [];
  const waived = waiver?.holds && !observation ? ['. ', ...waiverText(waiver)] : [];
  return [titleCell(line, number, ''), { text: [seen, ...asked, ...waived], colSpan: 3 }, EMPTY, EMPTY, checklistText(observation ? seenAs(line, observation.inOrder) : state, FONT)];
}

/** Also of a line that was waived. */
function seenAs({ limitTexts, added }: ApprovalLine, inOrder: boolean): ChecklistWord {
  if (!inOrder) return 'not in order';
  return !added && limitTexts.length > 0 ? 'seen, not measured' : 'in order';
}

function waiverRow(waiver: NonNullable<ApprovalLine['waiver']>): TableCell[] {
  return [EMPTY, { text: waiverText(waiver), colSpan: 3 }, EMPTY, EMPTY, checklistText('waived', FONT)];
}

function waiverText({ name, role, at, reason }: NonNullable<ApprovalLine['waiver']>): (string | { text: string; bold: true })[] {
  return [{ text: 'Waived', bold: true }, ` by ${name}${role ? `, ${role}` : ''}, ${instantText(at)}: ${reason}`];
}

function titleCell({ title, momentText, preparation }: ApprovalLine, number: number, tested: string): TableCell {
  const below = [momentText, preparation, tested].filter((part) => part !== '').join(' · ');
  return { stack: [{ text: `${number}  ${title}`, bold: true }, ...(below ? [{ text: below, color: theme.quiet, fontSize: size.small - 1 }] : [])] };
}
