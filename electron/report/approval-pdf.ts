import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import type { ApprovalContent } from '../../shared-lib/report/approval-content.ts';
import { approvalChecklist } from './approval-checklist.ts';
import { approvalClosing } from './approval-closing.ts';
import { FONT_FAMILY } from './fonts.ts';
import { keyValues } from './key-values.ts';
import { page, size, styles, theme } from './look.ts';
import { printDocument } from './print-document.ts';
import { printable } from './printable.ts';

/** Where the checklist is printed. */
type Layout = 'one page' | 'checklist on an appendix';

/** A signed press approval on one A4 page. A checklist that is too long for it goes on an appendix, and the page says so. */
export async function renderApprovalPdf(content: ApprovalContent): Promise<Uint8Array> {
  let pages = 0;
  const whole = await printDocument(approvalDocument(content, 'one page', (count) => (pages = count)));
  return pages <= 1 ? whole : printDocument(approvalDocument(content, 'checklist on an appendix'));
}

/** The approval as a pdfmake document, the same for the same content. @param onpages is told how many pages it takes */
export function approvalDocument(original: ApprovalContent, layout: Layout, onpages: (count: number) => void = () => undefined): TDocumentDefinitions {
  const { content, missing } = printable(original);
  const { approval, laboratory, signature, record } = content;
  const name = `Press approval: job ${approval.job}`;
  const checklist = approvalChecklist(approval.checklist);
  const closing = approvalClosing(content, missing);
  return {
    version: '1.7',
    language: 'en',
    displayTitle: true,
    info: { title: name, author: laboratory, creator: 'Laydown', producer: 'Laydown', creationDate: new Date(signature.at) },
    pageSize: 'A4',
    pageMargins: [page.left, 27, page.right, 29],
    defaultStyle: { font: FONT_FAMILY, fontSize: size.body, color: theme.ink, lineHeight: 1.05 },
    styles,
    footer: (number, count) => {
      onpages(count);
      return {
        margin: [page.left, 6, page.right, 0],
        columns: [
          { text: name, style: 'quiet' },
          { text: `record ${record.chainHash.slice(0, 16)}`, style: 'quiet', alignment: 'center' },
          { text: `page ${number} of ${count}`, style: 'quiet', alignment: 'right' },
        ],
      };
    },
    content: [
      {
        columns: [
          { text: name, style: 'title', fontSize: 16 },
          { text: laboratory, style: 'laboratory', alignment: 'right', margin: [0, 5, 0, 0] },
        ],
        columnGap: 16,
        margin: [0, 0, 0, 4],
      },
      facts(content),
      ...(layout === 'one page'
        ? [checklist, ...closing]
        : [
            { text: `The checklist of ${approval.checklist.length} lines stands on the appendix, from page 2 on; it is part of what was signed.`, margin: [0, 10, 0, 10] as [number, number, number, number], bold: true },
            ...closing,
            { text: 'Appendix: the checklist', style: 'heading', pageBreak: 'before' as const },
            checklist,
          ]),
    ],
  };
}

function facts({ approval }: ApprovalContent): Content {
  const { product, customer, pressRun, plan, version, lots, samples, allSamples, replaces, note } = approval;
  const named = samples.map(({ code, roll }) => (roll ? `${code} (${roll})` : code)).join('; ');
  // What is not said leaves no gap: the columns share what there is.
  const said = ([['Product', product], ['Press run', pressRun], ['Customer', customer], ['Plan', `${plan}, version ${version}`]] as [string, string][]).filter(([, value]) => value !== '');
  const half = (of: number) => keyValues(said.filter((_, index) => index % 2 === of), 56);
  return {
    stack: [
      {
        columns: [half(0), half(1)],
        columnGap: 16,
      },
      keyValues(
        [
          ['Samples', allSamples === false ? named || 'none named' : `all of the job, nobody has said which${named ? `: ${named}` : ''}`],
          ['Lots', lots.map(({ kind, material, code }) => `${kind}: ${material}, lot ${code}`).join('; ')],
          ['Note', note],
          ['Replaces', replaces ? `an approval signed before: ${replaces.reason}` : ''],
        ],
        56,
      ),
    ],
  };
}
