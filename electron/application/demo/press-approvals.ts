import type { Approval } from '../../../shared-lib/notebook/approval-views.ts';
import type { DemoBench } from './demo-bench.ts';
import { demoPassphrases } from './demo-signatures.ts';

/** The limits of a release are those that the customer and the filling line set. */
const SET_BY: Record<string, string> = { 'residual-solvent': 'Customer specification, revision B', 'heat-resistance': 'Jaws of the packing line, 125 °C' };
const LINES = ['residual-solvent, on press', 'heat-resistance, 24 h after printing, against a hot bar', 'lamination-bond, 7 days after lamination'];
const COOL_JAWS = 'The filling line of this order seals at 110 °C, below the interval';
const COLOUR = 'Colour matches the approved print';

type Initials = keyof typeof demoPassphrases;

/**
 * Two press runs of one job of the dumpling pouch, by a short plan for releasing a run: the present ink is approved with one line
 * waived; the trial ink waits, for its bond is undecided and nobody has waived it yet.
 */
export async function approvePressRuns(bench: DemoBench, pouchPlanId: string): Promise<void> {
  const { people } = await bench.do('session.get', {});
  const signing = (initials: Initials) => ({ personId: people.find((person) => person.initials === initials)!.personId, passphrase: demoPassphrases[initials] });
  const { content } = await bench.do('plan.get', { planId: pouchPlanId });
  const lines = content.lines
    .filter(({ lineId }) => LINES.includes(lineId))
    .map((line) => ({ ...line, limits: line.limits.map((limit) => ({ ...limit, ...(line.methodId === 'heat-resistance' ? { lower: 125 } : {}), source: SET_BY[line.methodId] ?? limit.source })) }));
  const { planId } = await bench.do('plan.add', {
    content: { ...content, title: 'Dumpling pouch, release of a press run', endUse: '', stresses: [], lines, dropped: [], note: 'What must be known before the rolls leave the hall.' },
  });
  const { lotIds, samples } = await bench.do('approval.job', { job: 'J-4418' });
  const lots = (await bench.do('materials.list', {})).flatMap((material) => material.lots).filter(({ lotId }) => lotIds.includes(lotId));
  const draft = (pressRun: string, sampleCode: string, ink: string, note: string) =>
    bench.do('approval.draft', {
      planId,
      product: content.product,
      job: 'J-4418',
      customer: content.customer,
      pressRun,
      lotIds: lots.filter(({ kind, material }) => kind !== 'laminate' && (kind !== 'ink' || material.includes(ink))).map(({ lotId }) => lotId),
      sampleIds: samples.filter(({ code }) => code === sampleCode).map(({ sampleId }) => sampleId),
      note,
    });
  const take = async (approval: Approval, title: string, sampleCode: string): Promise<Approval> => {
    const line = approval.checklist.find((candidate) => candidate.title === title)!;
    const { testId } = line.offers.find((offer) => offer.sampleCode === sampleCode && (title !== COLOUR || offer.method.startsWith('Colour')))!;
    return bench.do('approvalLine.link', { approvalId: approval.approvalId, lineId: line.lineId, testId });
  };
  const takeLines = async (approval: Approval, sampleCode: string): Promise<Approval> => {
    let filled = approval;
    for (const { title } of approval.checklist) filled = await take(filled, title, sampleCode);
    return filled;
  };
  const addLine = async ({ approvalId }: Approval, title: string) => (await bench.do('approvalLine.add', { approvalId, title })).checklist.at(-1)!.lineId;
  const see = async (approval: Approval, title: string, remark: string) =>
    bench.do('approvalLine.observe', { approvalId: approval.approvalId, lineId: await addLine(approval, title), inOrder: true, remark, ...signing('IR') });
  const waive = (approval: Approval, methodTitle: string, reason: string) =>
    bench.do('approvalLines.waive', { approvalId: approval.approvalId, lineIds: [approval.checklist.find(({ title }) => title.startsWith(methodTitle))!.lineId], reason, ...signing('TV') });

  const control = await takeLines(await draft('roll 1, present ink R0', 'Q-26-004', 'R0', ''), 'Q-26-004');
  await addLine(control, COLOUR);
  await take(await bench.do('approval.get', { approvalId: control.approvalId }), COLOUR, 'Q-26-004');
  await see(control, 'Register is within tolerance', '0,2 mm at most over the web');
  await see(control, 'Barcode reads', 'ten of ten');
  const { digest } = await waive(control, 'Heat', COOL_JAWS);
  await bench.do('approval.sign', { approvalId: control.approvalId, digest, ...signing('AQ') });

  const trial = await takeLines(await draft('roll 2, trial ink R7', 'Q-26-005', 'R7', 'A waiver for the bond is asked of Abena Quist; until then the roll waits.'), 'Q-26-005');
  await see(trial, 'Barcode reads', 'ten of ten');
  await waive(trial, 'Heat', COOL_JAWS);
}
