import type { Approval, ApprovalLine } from '../../../shared-lib/notebook/approval-views.ts';
import type { PropertyLine } from '../../../shared-lib/notebook/views.ts';
import type { VerdictWord } from '../../../shared-lib/method/property-verdict.ts';
import type { ApprovalContent } from '../../../shared-lib/report/approval-content.ts';

function property(title: string, text: string, intervalText: string, n: number, limitText: string, verdict: VerdictWord): PropertyLine {
  return { key: 'key', title, unit: '', text, intervalText, n, limitText, verdict: { property: 'key', limit: { property: 'key', lower: 1, upper: null, source: 'common practice' }, verdict, probability: null }, strip: null };
}

const nothing: ApprovalLine = {
  lineId: 'line',
  added: false,
  title: 'Barcode reads',
  momentText: '',
  preparation: '',
  replicatesText: '',
  limitTexts: [],
  state: 'open',
  remark: '',
  result: null,
  observation: null,
  waiver: null,
  offers: [],
};

const result = (sampleCode: string, properties: PropertyLine[]) => ({ testId: 't1', method: 'Tape', sampleCode, roll: 'roll 2', verdict: 'meets' as const, finishedAt: '2026-03-03T09:00:00.000Z', finishedBy: 'Imke Rasmund', properties, doubts: [] });

export const meetingLine: ApprovalLine = {
  ...nothing,
  title: 'Tape adhesion',
  momentText: '24 h after printing',
  state: 'meets',
  result: result('Q-26-021', [property('Print retained', '98.2 %', '95 % interval 97.1 to 99.0', 3, '≥ 95 %', 'meets')]),
};

export const waivedLine: ApprovalLine = {
  ...nothing,
  title: 'Lamination bond',
  momentText: '7 days after lamination',
  preparation: 'after 24 h at −18 °C',
  state: 'waived',
  result: result('Q-26-022', [
    property('Mean bond strength', '3.04 N/15 mm', '95 % interval 2.71 to 3.37', 5, '≥ 3 N/15 mm', 'undecided'),
    property('Lowest bond strength', '2.8 N/15 mm', '', 5, '≥ 2 N/15 mm', 'meets'),
  ]),
  waiver: { reason: 'the bond still builds; the rolls wait until it is read again', name: 'Abena Quist', role: 'quality lead', at: '2026-03-04T10:00:00.000Z', holds: true },
};

/** Made after the press run: nothing fills it, and it is waived. */
export const notTestedLine: ApprovalLine = { ...waivedLine, limitTexts: ['Weakest specimen ≥ 1.5 N/15 mm (common practice)'], result: null };

export const doubtfulLine: ApprovalLine = { ...meetingLine, result: { ...meetingLine.result!, doubts: ['Read with Tape, lot 7 on 2026-03-03, which expired on 2026-02-01.'] } };

/** Measured once, then on another roll; read once only. */
export const replacedLine: ApprovalLine = {
  ...meetingLine,
  state: 'too few',
  tooFew: '1 of 3 specimens',
  earlier: [{ testId: 't0', sampleCode: 'Q-26-020', roll: 'roll 1', finishedAt: '2026-03-02T09:00:00.000Z', text: 'Print retained 60 %', verdict: 'falls short' }],
};

export const seenLine: ApprovalLine = {
  ...nothing,
  added: true,
  state: 'in order',
  observation: { inOrder: true, remark: 'ten of ten', name: 'Imke Rasmund', role: 'technician', at: '2026-03-04T09:00:00.000Z' },
};

export function approvalContent(checklist: ApprovalLine[]): ApprovalContent {
  const approval: Approval = {
    approvalId: 'a1',
    product: 'dumpling pouch 600 g',
    job: 'J-4418',
    customer: 'Marrowfield Foods',
    pressRun: 'run 2, 2 March 2026',
    plan: 'Frozen dumpling pouch',
    version: '2',
    draftedAt: '2026-03-03T08:00:00.000Z',
    draftedBy: 'Imke Rasmund',
    lines: checklist.length,
    standing: 'ready to sign',
    standingWords: 'ready to sign',
    standingText: '',
    planId: 'p1',
    newestVersion: '2',
    note: '',
    lots: [
      { lotId: 'l1', materialId: 'm1', kind: 'film', material: 'PET film', supplier: 'Osprey Vale', code: 'OV-5521', receivedOn: null, note: '' },
      { lotId: 'l2', materialId: 'm2', kind: 'ink', material: 'Low-migration red', supplier: 'Tamarind', code: 'T-88', receivedOn: null, note: '' },
      { lotId: 'l3', materialId: 'm3', kind: 'adhesive', material: 'Two-part adhesive', supplier: 'Corrie', code: 'C-12', receivedOn: null, note: '' },
    ],
    samples: [
      { sampleId: 's1', code: 'Q-26-021', roll: 'roll 2' },
      { sampleId: 's2', code: 'Q-26-022', roll: 'roll 2' },
    ],
    allSamples: false,
    checklist,
    summary: '3 lines: 1 meets its limits, 1 was seen to be in order, 1 is waived (by Abena Quist)',
    blocking: '',
    cautions: [{ caution: { hazard: 'food-contact', text: 'Samples that were tested never go back to food.' }, methods: 'Residual solvent' }],
    digest: 'f'.repeat(64),
    signed: null,
    correctedLater: [],
    retiredLater: [],
    withdrawn: null,
    replaces: { approvalId: 'a0', reason: 'second ink lot' },
    replacedBy: null,
  };
  return {
    laboratory: 'Quillmere Flexibles, film laboratory',
    approval,
    signature: { name: 'Abena Quist', role: 'quality lead', at: '2026-03-04T10:12:00.000Z', meaning: `approves the press run of job J-4418 (dumpling pouch 600 g, run 2): ${approval.summary}` },
    record: { entries: 4711, chainHash: '0123456789abcdef'.repeat(4) },
  };
}

/** Of a line with a limit that nobody could measure. */
export const seenNotMeasuredLine: ApprovalLine = {
  ...seenLine,
  added: false,
  title: 'Heat resistance',
  limitTexts: ['Temperature at which 5 % fail ≥ 125 °C (filling line)'],
  state: 'seen, not measured',
  observation: { ...seenLine.observation!, remark: 'ran two hours on the line, no pick-off' },
};
