import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import { appendixPart } from './appendix-part.ts';
import { closingPart } from './closing-part.ts';
import { FONT_FAMILY } from './fonts.ts';
import { contentWidth, page, size, styles, theme } from './look.ts';
import { genealogyPart } from './genealogy-part.ts';
import { printable } from './printable.ts';
import { sectionPart } from './section-part.ts';
import { summaryPart } from './summary-part.ts';

/** The report as a pdfmake document, the same for the same content. */
export function reportDocument(original: ReportContent): TDocumentDefinitions {
  const { content, missing } = printable(original);
  const name = content.number ? `${content.number} · ${content.title}` : content.title;
  return {
    version: '1.7',
    language: 'en',
    displayTitle: true,
    info: { title: name, author: content.laboratory || content.preparedBy, creator: 'Laydown', producer: 'Laydown', creationDate: new Date(content.preparedAt) },
    pageSize: 'A4',
    pageMargins: [page.left, page.top, page.right, page.bottom],
    defaultStyle: { font: FONT_FAMILY, fontSize: size.body, color: theme.ink, lineHeight: 1.05 },
    styles,
    header: (number) => (number === 1 ? null : header(content)),
    footer: (number, count) => footer(content, number, count),
    content: [
      ...summaryPart(content),
      ...content.sections.flatMap((section, index) => sectionPart(section, index + 1, content.sections.slice(0, index))),
      ...appendixPart(content.appendix),
      ...genealogyPart(content.genealogy ?? []),
      ...closingPart(content, missing),
    ],
  };
}

/** One line: a title that is too long for it is cut here; it stands in full on the first page. */
function header(content: ReportContent): Content {
  return {
    margin: [page.left, 30, page.right, 0],
    columns: [
      { text: shortened(content.title, 80), style: 'quiet' },
      { text: shortened(content.laboratory, 50), style: 'quiet', alignment: 'right', width: 'auto' },
    ],
  };
}

function footer(content: ReportContent, number: number, count: number): Content {
  return {
    margin: [page.left, 18, page.right, 0],
    stack: [
      hairline(),
      {
        columns: [
          { text: `Report ${shortened(content.number, 40) || 'draft, not issued'}`, style: 'quiet' },
          { text: `record ${content.record.chainHash.slice(0, 16)}`, style: 'quiet', alignment: 'center' },
          { text: `page ${number} of ${count}`, style: 'quiet', alignment: 'right' },
        ],
        margin: [0, 3, 0, 0],
      },
    ],
  };
}

function hairline(): Content {
  return { canvas: [{ type: 'line', x1: 0, y1: 3, x2: contentWidth, y2: 3, lineWidth: 0.4, lineColor: theme.rule }] };
}

function shortened(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
