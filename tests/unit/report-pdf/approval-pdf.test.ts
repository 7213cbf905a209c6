import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { renderApprovalPdf } from '../../../electron/report/approval-pdf.ts';
import type { ApprovalLine } from '../../../shared-lib/notebook/approval-views.ts';
import { readPdf, solid } from '../../e2e/pdf-text.ts';
import { approvalContent, doubtfulLine, meetingLine, notTestedLine, replacedLine, seenLine, seenNotMeasuredLine, waivedLine } from './approval-fixture.ts';

const three = [meetingLine, waivedLine, seenLine];

async function printed(checklist: ApprovalLine[]) {
  const bytes = await renderApprovalPdf(approvalContent(checklist));
  if (process.env.LAYDOWN_KEEP_PDF) writeFileSync(`${process.env.LAYDOWN_KEEP_PDF}/approval-${checklist.length}.pdf`, bytes);
  return readPdf(bytes);
}

describe('the page of a signed approval', () => {
  it('says everything that was signed, on one page', async () => {
    const { pages, text } = await printed(three);
    expect(pages).toHaveLength(1);
    for (const words of [
      ...['Press approval: job J-4418', 'dumpling pouch 600 g', 'Marrowfield Foods', 'run 2, 2 March 2026', 'Frozen dumpling pouch, version 2'],
      ...['film: PET film, lot OV-5521', 'ink: Low-migration red, lot T-88', 'adhesive: Two-part adhesive, lot C-12', 'second ink lot'],
      ...['1  Tape adhesion', '24 h after printing · Q-26-021 (roll 2), finished 2026-03-03', 'Samples', 'Q-26-021 (roll 2); Q-26-022 (roll 2)', '98.2 %', '(95 % interval 97.1 to 99.0)', '≥ 95 % (common practice)', 'meets'],
      ...['2  Lamination bond', '3.04 N/15 mm', '95 % interval 2.71 to 3.37', 'undecided', 'Lowest bond strength'],
      ...['Waived by Abena Quist, quality lead, 2026-03-04 10:00 UTC: the bond still builds; the rolls wait until it is read again', 'waived'],
      ...['3  Barcode reads', 'Seen by Imke Rasmund, technician, 2026-03-04 09:00 UTC: ten of ten', 'in order'],
      ...['Samples that were tested never go back to food.', 'contact with food', 'common practice'],
      ...['Abena Quist, quality lead', 'approves the press run of job J-4418', '2026-03-04 10:12 UTC', 'first 4711 entries', '0123456789abcdef'.repeat(4)],
    ]) {
      expect(text).toContain(solid(words));
    }
  });

  it('has room for twenty-five lines', async () => {
    const { pages } = await printed(Array.from({ length: 25 }, (_, index) => (index === 3 ? waivedLine : index % 4 === 1 ? seenLine : meetingLine)));
    expect(pages).toHaveLength(1);
  });

  it('says of a line that nobody has seen that it is waived, and not that it is open as well', async () => {
    const { pages, text } = await printed(Array.from({ length: 20 }, (_, index) => (index < 10 ? meetingLine : notTestedLine)));
    expect(pages).toHaveLength(1);
    expect(text).toContain(solid('Not tested (asked for: Weakest specimen ≥ 1.5 N/15 mm (common practice)). Waived by Abena Quist, quality lead'));
    expect(text).not.toContain(solid('open'));
  });

  it('names a result that was replaced, a count that is too few, and what was seen in place of a measurement', async () => {
    const { text } = await printed([replacedLine, seenNotMeasuredLine]);
    for (const words of ['Linked before Print retained 60 %: falls short, on Q-26-020 (roll 1), finished 2026-03-02', 'Too few 1 of 3 specimens', 'ran two hours on the line, no pick-off', 'seen, not measured']) {
      expect(text).toContain(solid(words));
    }
  });

  it('says when nobody has said which samples stand for the run', async () => {
    const content = approvalContent([meetingLine]);
    delete content.approval.allSamples;
    expect((await readPdf(await renderApprovalPdf(content))).text).toContain(solid('Samples all of the job, nobody has said which: Q-26-021 (roll 2)'));
  });

  it('prints what makes a result doubtful', async () => {
    const { text } = await printed([doubtfulLine]);
    expect(text).toContain(solid('Flag Read with Tape, lot 7 on 2026-03-03, which expired on 2026-02-01.'));
  });

  it('puts a longer checklist on an appendix and says so on the page that is signed', async () => {
    const { pages } = await printed(Array.from({ length: 70 }, (_, index) => three[index % 3]!));
    expect(pages.length).toBeGreaterThan(1);
    expect(pages[0]).toContain(solid('The checklist of 70 lines stands on the appendix'));
    expect(pages[0]).toContain(solid('Signed by passphrase'));
    expect(pages[0]).not.toContain(solid('Tape adhesion'));
    expect(pages.slice(1).join('')).toContain(solid('70  Tape adhesion'));
  });

  it('is the same for the same content', async () => {
    const [one, two] = await Promise.all([renderApprovalPdf(approvalContent(three)), renderApprovalPdf(approvalContent(three))]);
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });
});
