import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { renderPlanPdf } from '../../../electron/report/plan-pdf.ts';
import { endUses } from '../../../shared-lib/plan/end-uses.ts';
import type { PlanContent } from '../../../shared-lib/plan/plan.ts';
import { proposeLines } from '../../../shared-lib/plan/propose-lines.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { planSheet, type PlanSheet } from '../../../shared-lib/report/plan-sheet.ts';

function sheetOf({ id, title, stresses }: (typeof endUses)[number], more: Partial<PlanContent> = {}): PlanSheet {
  return planSheet(
    { title: `${title}, product 600 g`, product: 'product 600 g', customer: 'Marrowfield Foods', endUse: id, stresses, lines: proposeLines(stresses), dropped: [], note: '', ...more },
    {
      version: '2',
      laboratory: 'Quillmere Flexibles',
      writtenBy: 'Abena Quist',
      writtenAt: '2026-03-10T12:00:00.000Z',
      standing: 'in use',
      record: { entries: 12, chainHash: 'ab'.repeat(32) },
      methodOf: (methodId) => allMethods.find((method) => method.id === methodId),
    },
  );
}

const solid = (text: string) => text.replace(/[\s\u200b]/gu, '');

/** Text of each page without blanks, read with another program than the one that wrote it. */
async function pagesOf(sheet: PlanSheet, name = ''): Promise<string[]> {
  const bytes = await renderPlanPdf(sheet);
  if (process.env.LAYDOWN_LOOK && name) writeFileSync(`${process.env.LAYDOWN_LOOK}/plan-${name}.pdf`, bytes);
  // Loaded late: it brings a global Path2D of its own canvas, which Chart.js would take up.
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(solid(items.map((item) => ('str' in item ? item.str : '')).join('')));
  }
  await document.destroy();
  return pages;
}

describe('renderPlanPdf', () => {
  it.each(endUses)('prints $title on one page, and nothing of it is lost', async (use) => {
    const sheet = sheetOf(use);
    const pages = await pagesOf(sheet, use.id);
    expect(pages).toHaveLength(1);
    for (const { method, standards, when, preparation, howMany, limits, reasons } of sheet.lines) {
      for (const text of [method, standards, when, preparation, howMany, ...limits.map((limit) => limit.replace('(common practice)', '*')), ...reasons]) expect(pages[0]).toContain(solid(text));
    }
    for (const text of [sheet.title, sheet.laboratory, ...sheet.stresses, ...sheet.facts.map((fact) => fact.text), ...sheet.hazards.map(({ methods }) => methods), ...sheet.notes]) expect(pages[0]).toContain(solid(text));
  });

  it('goes on over pages where the lab asks for more, with what is not made and why', async () => {
    const [use] = endUses;
    const lines = Array.from({ length: 3 }, (_, time) => proposeLines(use!.stresses).map((line) => ({ ...line, lineId: `${time} ${line.lineId}` }))).flat();
    const dropped = { ...lines[0]!, reason: 'Bought in printed 🙂' };
    const pages = await pagesOf(sheetOf(use!, { lines, dropped: [{ lineId: 'x', methodId: dropped.methodId, moment: dropped.moment, preparation: '', reason: dropped.reason }], note: 'As agreed.' }));
    expect(pages.length).toBeGreaterThan(1);
    const text = pages.join('');
    expect(text.split(solid('Crinkle of the print between the fingers')).length - 1).toBe(lines.filter(({ methodId }) => methodId === 'crinkle').length);
    expect(text).toContain(solid('before printing: Bought in printed □'));
    expect(text).toContain('U+1F642');
    expect(text).toContain(solid('As agreed.'));
  });

  it('gives the same bytes for the same sheet', async () => {
    const sheet = sheetOf(endUses[0]!);
    expect(Buffer.from(await renderPlanPdf(sheet)).equals(Buffer.from(await renderPlanPdf(structuredClone(sheet))))).toBe(true);
  });
});
