import type { Content } from 'pdfmake/interfaces.js';
import type { ReportSection } from '../../shared-lib/report/content.ts';
import { keyValues } from './key-values.ts';
import { contentWidth, instantText, size, theme } from './look.ts';
import { propertyTable } from './property-table.ts';
import { textHeight } from './text-height.ts';

/** Higher openings may break across pages, in points. */
const HIGHEST_WHOLE = 460;
const LABEL_WIDTH = 58;

/** The start of a section, on one page: what was tested and how, and its properties. */
export function sectionOpening(section: ReportSection, number: number): Content[] {
  const { method, lines } = section;
  const heading: Content[] = [
    { canvas: [{ type: 'line', x1: 0, y1: 0, x2: contentWidth, y2: 0, lineWidth: 0.8, lineColor: theme.accent }] },
    { text: `${number}  ${section.heading}`, style: 'heading', outline: true, margin: [0, 10, 0, 1] },
    { text: [method.title, ...method.standards].join(' · '), fontSize: size.body },
  ];
  const rest: Content[] = [
    { text: method.shows, style: 'quiet', margin: [0, 2, 0, 5] },
    ...facts(section),
    ...(lines.length > 0 ? [propertyTable('', lines.map((line) => ({ group: '', name: line.title, line })))] : []),
  ];
  if (height(section) < HIGHEST_WHOLE) return [{ unbreakable: true, stack: [...heading, ...rest], margin: [0, 22, 0, 0] }];
  return [{ unbreakable: true, stack: heading, margin: [0, 22, 0, 0] }, ...rest];
}

function facts({ sample, method, conditions, testedBy, testedAt }: ReportSection): Content[] {
  return [
    {
      columns: [
        keyValues([['Sample', sample.code], ['Product', sample.product], ['Job', sample.job], ['Roll', sample.roll]], LABEL_WIDTH),
        keyValues([['Tested by', testedBy], ['Tested', instantText(testedAt)], ['Method', `version ${method.version}`], ['Calculation', `${method.calculation}, version ${method.calculationVersion}`]], LABEL_WIDTH),
      ],
      columnGap: 14,
    },
    {
      ...keyValues([['Materials', sample.materials.join('; ')], ['Conditions', conditions.flatMap((item, index) => condition(item, index === conditions.length - 1))]], LABEL_WIDTH),
      margin: [0, 0, 0, 8],
    },
  ];
}

function condition({ label, value }: ReportSection['conditions'][number], isLast: boolean): Content[] {
  return [{ text: `${label} `, color: theme.quiet }, { text: isLast ? value : `${value}  ·  ` }];
}

/** An estimate on the safe side. */
function height({ heading, method, sample, conditions, lines }: ReportSection): number {
  const half = contentWidth / 2 - LABEL_WIDTH - 20;
  const texts = [heading, [method.title, ...method.standards].join(' '), method.shows, sample.materials.join('; '), conditions.map(({ label, value }) => `${label} ${value}  ·  `).join('')];
  const narrow = [sample.code, sample.product, sample.job, sample.roll, `${method.calculation} ${method.calculationVersion} ${method.version}`];
  const rows = lines.map(({ title, text, limitText }) => Math.max(26, ...[title, text, limitText].map((part) => textHeight(part, 60, size.table))));
  return [
    ...texts.map((text) => textHeight(text, contentWidth - LABEL_WIDTH, size.body) + 6),
    ...narrow.map((text) => textHeight(text, half, size.body) + 3),
    ...rows,
    60,
  ].reduce((sum, part) => sum + part, 0);
}
