import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { lineStateText } from '../../../../shared-lib/approval/line-state-text.ts';
import { isBlocking, type BlockingState } from '../../../../shared-lib/approval/line-state.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { Approval, ApprovalLine } from '../../../../shared-lib/notebook/approval-views.ts';
import { lineName } from '../../../../shared-lib/plan/line-texts.ts';
import { approvalView } from '../../approvals/approval-view.ts';
import { conditionAgainstPlan } from '../../condition-against-plan.ts';
import type { Draft, OpenNotebook } from '../../open-notebook.ts';
import { finishingEntry } from '../../queries/approvals.ts';
import { findSample } from '../../queries/samples.ts';
import { loadTest } from '../../queries/tests.ts';
import { findPlanVersion } from '../../queries/plans.ts';
import { Refusal } from '../../refusal.ts';
import { requireReason } from '../../require-reason.ts';
import { sign } from '../../signing/sign.ts';
import type { Workplace } from '../../workplace.ts';
import { lineOf, requireDraft } from './drafting.ts';

/** What a signature says is short enough to be read on the page. */
const LONGEST_REMARK = 1000;

/** A finished test of a sample that stands for the press run fills a line. */
export function linkResult({ notebook }: Workplace, { approvalId, lineId, testId, reason }: ParsedInput<'approvalLine.link'>): Approval {
  const approval = requireDraft(notebook, approvalId);
  const line = lineOf(approval, lineId);
  if (line.state !== 'open' && line.state !== 'reopened') requireReason(reason, 'Something fills this line already');
  notebook.append([linked(notebook, approval, line, testId, reason.trim())]);
  return approvalView(notebook, approvalId);
}

/** Takes for every open line of the plan the test that is offered first; a test fills one line. */
export function linkOffered({ notebook }: Workplace, { approvalId }: ParsedInput<'approval.linkOffered'>): Approval {
  const approval = requireDraft(notebook, approvalId);
  const taken = new Set<string>();
  const drafts = approval.checklist.flatMap((line): Draft[] => {
    if (line.added || line.state !== 'open') return [];
    const first = line.offers.find(({ testId }) => !taken.has(testId));
    if (!first) return [];
    taken.add(first.testId);
    return [linked(notebook, approval, line, first.testId, '')];
  });
  if (drafts.length === 0) throw new Refusal('conflict', 'No finished test of the samples that stand for this press run fits an open line.');
  notebook.append(drafts);
  return approvalView(notebook, approvalId);
}

/** What a person has seen and signs for. */
export async function observeLine({ notebook }: Workplace, { approvalId, lineId, inOrder, remark, reason, ...signing }: ParsedInput<'approvalLine.observe'>): Promise<Approval> {
  const seen = requireObservable(notebook, approvalId, lineId, reason);
  refuseLong('remark', remark);
  if (!inOrder && remark.trim() === '') throw new InputError('remark', '', 'Say what is not in order.');
  if (seen.limitTexts.length > 0 && remark.trim() === '') throw new InputError('remark', '', 'The plan sets a limit here: say in words what was seen in place of a measurement.');
  const signature = await sign(notebook, signing, `observed “${lineName(seen)}”: ${!inOrder ? 'not in order' : seen.limitTexts.length > 0 ? 'in order as seen, not measured' : 'in order'}`);
  // Hashing took its time.
  requireObservable(notebook, approvalId, lineId, reason);
  notebook.append([{ kind: 'approvalLine.observed', body: { approvalId, lineId, inOrder, remark: remark.trim(), ...insteadOf(seen), reason: reason.trim(), signature } }]);
  return approvalView(notebook, approvalId);
}

/** A named person lets lines pass as they stand, for one reason: one passphrase, and a signature of its own on each line. */
export async function waiveLines({ notebook }: Workplace, { approvalId, lineIds, reason, ...signing }: ParsedInput<'approvalLines.waive'>): Promise<Approval> {
  const lines = requireWaivable(notebook, approvalId, lineIds);
  const because = reason.trim();
  if (because === '') throw new InputError('reason', '', 'A waiver needs its reason: say why the run may go on all the same.');
  refuseLong('reason', reason);
  const meaningOf = ({ name, stands }: Waivable) => `waives “${name}” (${stands}) because ${because}`;
  const signature = await sign(notebook, signing, meaningOf(lines[0]!));
  const again = requireWaivable(notebook, approvalId, lineIds);
  if (again.some(({ stands }, index) => stands !== lines[index]!.stands)) throw new Refusal('conflict', 'A line stands otherwise by now; look at it before waiving it.');
  notebook.append(lines.map((line) => ({ kind: 'approvalLine.waived', body: { approvalId, lineId: line.lineId, of: line.state, reason: because, signature: { ...signature, meaning: meaningOf(line) } } })));
  return approvalView(notebook, approvalId);
}

function linked(notebook: OpenNotebook, { approvalId, job, planId, version, checklist, samples }: Approval, line: ApprovalLine, testId: string, reason: string): Draft {
  const { store } = notebook;
  const { lineId, added } = line;
  const test = loadTest(store, testId);
  const finishedId = finishingEntry(store, testId);
  if (test.state !== 'finished' || finishedId === undefined) throw new InputError('testId', testId, 'Only a finished test fills a line; finish it first.');
  if (findSample(store, test.sampleId)?.job.toLowerCase() !== job.toLowerCase()) throw new InputError('testId', testId, `This test was not made on a sample of job ${job}.`);
  if (!samples.some(({ sampleId }) => sampleId === test.sampleId)) throw new InputError('testId', testId, 'The sample of this test does not stand for this press run: change the approval first, if it should.');
  const other = checklist.find((one) => one.lineId !== lineId && one.result?.testId === testId);
  if (other) throw new InputError('testId', testId, `This test fills the line ‘${lineName(other)}’ already; each line is decided by a test of its own.`);
  const asked = findPlanVersion(store, planId, version)?.content.lines.find((one) => one.lineId === lineId);
  if (!added && asked?.methodId !== test.methodId) throw new InputError('testId', testId, 'This test was made by another method than the plan asks for.');
  const under = asked && conditionAgainstPlan(asked, notebook.methods.ofTest(test), test.conditions);
  if (under) throw new InputError('testId', testId, `This test was made under another condition than the plan asks for: ${under.label}.`);
  return { kind: 'approvalLine.linked', body: { approvalId, lineId, result: { testId, finishedId }, ...insteadOf(line), reason } };
}

/** The result that filled the line until now. */
function insteadOf({ result }: ApprovalLine): { insteadOf?: string } {
  return result ? { insteadOf: result.testId } : {};
}

function requireObservable(notebook: OpenNotebook, approvalId: string, lineId: string, reason: string): ApprovalLine {
  const line = lineOf(requireDraft(notebook, approvalId), lineId);
  if (line.onlyMeasured) throw new Refusal('conflict', line.onlyMeasured);
  if (line.state !== 'open' && line.state !== 'reopened') requireReason(reason, 'Something fills this line already');
  return line;
}

interface Waivable {
  lineId: string;
  name: string;
  state: BlockingState;
  /** The state in words. */
  stands: string;
}

function requireWaivable(notebook: OpenNotebook, approvalId: string, lineIds: readonly string[]): Waivable[] {
  const draft = requireDraft(notebook, approvalId);
  return [...new Set(lineIds)].map((lineId) => {
    const line = lineOf(draft, lineId);
    const { state } = line;
    if (!isBlocking(state)) throw new Refusal('conflict', `The line ‘${lineName(line)}’ blocks nothing (${state}); there is nothing to waive.`);
    return { lineId, name: lineName(line), state, stands: lineStateText(line) };
  });
}

function refuseLong(field: string, text: string): void {
  if (text.trim().length > LONGEST_REMARK) throw new InputError(field, text, `This may have ${LONGEST_REMARK} characters at most, so that it can be read on the page.`);
}
