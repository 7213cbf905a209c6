import type { Content } from 'pdfmake/interfaces.js';
import type { VerdictWord } from '../../shared-lib/notebook/entry.ts';
import { verdictMark } from '../../shared-lib/figure/verdict-mark.ts';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import { keyValues } from './key-values.ts';
import { instantText, panelLayout, size, theme } from './look.ts';
import { propertyTable } from './property-table.ts';
import { verdictText } from './verdict-text.ts';

/** The first page: who reports what to whom, the overall verdict, and every headline property on one line. */
export function summaryPart(content: ReportContent): Content[] {
  const { replaces } = content;
  return [
    { text: content.laboratory, style: 'laboratory', margin: [0, 0, 0, 6] },
    { text: content.title, style: 'title', margin: [0, 0, 0, 14] },
    {
      columns: [
        keyValues([['Report', content.number || 'Draft, not issued'], ['For', content.recipient], ['Replaces', replaces ? `${replaces.number}: ${replaces.reason}` : '']]),
        keyValues([['Prepared by', content.preparedBy], ['Prepared', instantText(content.preparedAt)], ['Tests', String(content.sections.length)]]),
      ],
      columnGap: 24,
    },
    overallVerdict(content),
    ...(content.remark ? [{ text: content.remark, fontSize: size.body, lineHeight: 1.15, margin: [0, 0, 0, 16] as [number, number, number, number] }] : []),
    content.summary.length === 0
      ? { text: 'No property was called for.', style: 'quiet' }
      : propertyTable('Summary', content.summary.map(({ sample, product, method, line }) => ({ group: [sample, product, method].filter(Boolean).join(' · '), name: line.title, line }))),
    { unbreakable: true, stack: [{ text: stripKey(), style: 'quiet' }], margin: [0, 6, 0, 0] },
  ];
}

function overallVerdict(content: ReportContent): Content {
  const words = content.sections.flatMap((section) => section.lines.map((line) => line.verdict.verdict));
  return {
    table: {
      widths: ['*'],
      body: [[{ stack: [{ text: 'Overall verdict', style: 'label', margin: [0, 0, 0, 2] }, verdictText(content.overall, 15), { text: tally(words), style: 'quiet', margin: [0, 3, 0, 0] }] }]],
    },
    layout: panelLayout(theme[verdictMark(content.overall).colour]),
    margin: [0, 16, 0, 16],
  };
}

function tally(words: VerdictWord[]): string {
  const count = (word: VerdictWord) => words.filter((candidate) => candidate === word).length;
  const limited = words.length - count('no limit');
  if (limited === 0) return 'No limit is set on any property of this report.';
  const parts = (['meets', 'falls short', 'undecided'] as const).filter((word) => count(word) > 0).map((word) => `${word} ${count(word)}`);
  return `Of ${limited} ${limited === 1 ? 'property' : 'properties'} with a limit: ${parts.join(' · ')}.`;
}

function stripKey(): string {
  return (
    'How to read a strip: dots are readings (open with an arrow: the true value lies beyond; a cross: doubtful; a thin bar: a bracket), ' +
    'the thick bar is the interval, the upright mark the value; the square bracket is the limit and opens to the allowed, shaded side. ' +
    'Strips of one property share a scale unless that would make one too narrow to read; in the sections each has its own.'
  );
}
