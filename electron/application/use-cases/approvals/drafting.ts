import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { ApprovalFields } from '../../../../shared-lib/notebook/approval-entries.ts';
import type { Approval, ApprovalHeading, JobFacts } from '../../../../shared-lib/notebook/approval-views.ts';
import { approvalHeading, approvalView, requireApproval } from '../../approvals/approval-view.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { approvalsOfJob, listApprovals, samplesOfApproval, samplesOfJob } from '../../queries/approvals.ts';
import { lotsOfApproval, lotsOfSample } from '../../queries/materials.ts';
import { findPlan, findPlanVersion, followedPlanOf, listPlans } from '../../queries/plans.ts';
import { knownLots } from '../../known-lots.ts';
import { requireChange } from '../../require-change.ts';
import { requireReason } from '../../require-reason.ts';
import { Refusal } from '../../refusal.ts';
import type { Workplace } from '../../workplace.ts';

const ASKED_SAMPLES = 'Say which samples of the job stand for this press run: its checklist is filled from them only.';

/** Newest first. */
export function approvalsList({ notebook }: Workplace): ApprovalHeading[] {
  return listApprovals(notebook.store).map((approval) => approvalHeading(notebook, approval));
}

export function getApproval({ notebook }: Workplace, { approvalId }: ParsedInput<'approval.get'>): Approval {
  return approvalView(notebook, approvalId);
}

/** What samples and plans say about a job. */
export function jobFacts({ notebook }: Workplace, { job }: ParsedInput<'approval.job'>): JobFacts {
  const { store } = notebook;
  const samples = samplesOfJob(store, job);
  const product = firstSaid(samples.map((sample) => sample.product));
  const followed = samples.map(({ sampleId }) => followedPlanOf(store, sampleId)?.planId).find((planId) => planId !== undefined);
  const planId = followed ?? listPlans(store).find((plan) => !plan.retired && product !== '' && plan.product === product)?.planId ?? null;
  const plan = planId === null ? undefined : findPlan(store, planId);
  const named = samples.map(({ sampleId, code, roll, addedAt }) => ({ sampleId, code, roll, addedAt, lotIds: lotsOfSample(store, sampleId).map(({ lotId }) => lotId) }));
  return {
    product,
    customer: firstSaid([...samples.map(({ customer }) => customer), plan ? (findPlanVersion(store, plan.planId, plan.version)?.content.customer ?? '') : '']),
    samples: named,
    lotIds: [...new Set(named.flatMap(({ lotIds }) => lotIds))],
    planId,
    signed: approvalsOfJob(store, job).flatMap(({ approvalId, pressRun, signedSeq }) => (signedSeq === null ? [] : [{ approvalId, pressRun }])),
  };
}

/** A checklist for one job, from the newest version of a plan. */
export function draftApproval(workplace: Workplace, { planId, replacesReason, lotIds, sampleIds, ...input }: ParsedInput<'approval.draft'>): Approval {
  const { notebook } = workplace;
  if (input.job === '') throw new InputError('job', '', 'Say which job is to be approved.');
  const plan = planId === '' ? undefined : findPlan(notebook.store, planId);
  if (!plan) throw new InputError('planId', planId, 'Choose the plan that the checklist is drawn from.');
  if (plan.retired) throw new InputError('planId', planId, `The plan ${plan.title} is retired; choose one in use.`);
  const lots = knownLots(notebook.store, lotIds);
  const signed = refuseSecondDraft(notebook, input.job, input.pressRun);
  if (signed !== null && replacesReason.trim() === '') {
    throw new InputError('replacesReason', '', 'There is a signed approval of this job and press run: say why another takes its place, or give the press run that is meant.');
  }
  const standing = standingSamples(notebook, input.job, sampleIds);
  // As the samples write it, so that a job has one spelling.
  const job = samplesOfJob(notebook.store, input.job)[0]?.job ?? input.job;
  const approvalId = workplace.newId();
  const replaces = signed === null ? null : { approvalId: signed, reason: replacesReason.trim() };
  notebook.append([{ kind: 'approval.drafted', body: { approvalId, planId, version: plan.version, ...input, job, lotIds: lots, sampleIds: standing, replaces } }]);
  return approvalView(notebook, approvalId);
}

/** Says a draft anew. */
export function changeApproval({ notebook }: Workplace, { approvalId, reason, sampleIds, ...input }: ParsedInput<'approval.change'>): Approval {
  requireDraft(notebook, approvalId);
  const { store } = notebook;
  const stored = requireApproval(notebook, approvalId);
  const before: ApprovalFields = {
    product: stored.product,
    customer: stored.customer,
    lotIds: lotsOfApproval(store, approvalId).map(({ lotId }) => lotId),
    sampleIds: stored.samplesSaid === 0 ? null : samplesOfApproval(store, stored).map(({ sampleId }) => sampleId),
    note: stored.note,
  };
  if (sampleIds === null && before.sampleIds !== null) throw new InputError('sampleIds', null, ASKED_SAMPLES);
  const { product, customer, note } = input;
  const after: ApprovalFields = { product, customer, lotIds: knownLots(store, input.lotIds), sampleIds: sampleIds && standingSamples(notebook, stored.job, sampleIds), note };
  notebook.append([{ kind: 'approval.changed', body: { approvalId, before, after, reason: requireChange(before, after, reason) } }]);
  return approvalView(notebook, approvalId);
}

/** A line that the plan does not have. */
export function addApprovalLine(workplace: Workplace, { approvalId, title }: ParsedInput<'approvalLine.add'>): Approval {
  const { notebook } = workplace;
  const { checklist } = requireDraft(notebook, approvalId);
  if (title === '') throw new InputError('title', '', 'Say what is to be looked at, e.g. ‘Barcode reads’.');
  if (checklist.some((line) => line.title.toLowerCase() === title.toLowerCase() && line.added)) throw new InputError('title', title, 'The checklist has this line already.');
  notebook.append([{ kind: 'approvalLine.added', body: { approvalId, lineId: workplace.newId(), title } }]);
  return approvalView(notebook, approvalId);
}

export function dropApprovalLine({ notebook }: Workplace, { approvalId, lineId, reason }: ParsedInput<'approvalLine.drop'>): Approval {
  if (!lineOf(requireDraft(notebook, approvalId), lineId).added) throw new Refusal('conflict', 'A line of the plan is not dropped; a named person may waive it.');
  requireReason(reason, 'The line was added before');
  notebook.append([{ kind: 'approvalLine.dropped', body: { approvalId, lineId, reason: reason.trim() } }]);
  return approvalView(notebook, approvalId);
}

/** @throws Refusal when it is signed or withdrawn: it is as it is then */
export function requireDraft(notebook: OpenNotebook, approvalId: string): Approval {
  const approval = approvalView(notebook, approvalId);
  if (approval.withdrawn) throw new Refusal('conflict', `This press approval was withdrawn by ${approval.withdrawn.name} and takes nothing any more; draft another.`);
  if (approval.signed) throw new Refusal('conflict', `This press approval was signed by ${approval.signed.name} and stays as it is; draft one that takes its place, or withdraw it.`);
  return approval;
}

/** @throws Refusal when the approval has no such line */
export function lineOf({ checklist }: Approval, lineId: string): Approval['checklist'][number] {
  const line = checklist.find((candidate) => candidate.lineId === lineId);
  if (!line) throw new Refusal('not-found', 'The checklist has no such line.');
  return line;
}

function firstSaid(texts: readonly string[]): string {
  return texts.find((text) => text !== '') ?? '';
}

/** Each sample once. @throws InputError on `sampleIds` when none is named though the job has some, or one is not of the job */
function standingSamples({ store }: OpenNotebook, job: string, sampleIds: readonly string[]): string[] {
  const ofJob = new Set(samplesOfJob(store, job).map(({ sampleId }) => sampleId));
  const foreign = sampleIds.findIndex((sampleId) => !ofJob.has(sampleId));
  if (foreign !== -1) throw new InputError(`sampleIds[${foreign}]`, sampleIds[foreign], `This is not a sample of job ${job}.`);
  if (sampleIds.length === 0 && ofJob.size > 0) throw new InputError('sampleIds', [], ASKED_SAMPLES);
  return [...new Set(sampleIds)];
}

/** @returns the signed approval of this job and press run, which the draft would replace */
function refuseSecondDraft({ store }: OpenNotebook, job: string, pressRun: string): string | null {
  const same = approvalsOfJob(store, job).filter((other) => other.pressRun.toLowerCase() === pressRun.toLowerCase());
  if (same.some(({ signedSeq }) => signedSeq === null)) throw new InputError('pressRun', pressRun, 'This job and press run has a draft already: go on with it, or withdraw it.');
  return same[0]?.approvalId ?? null;
}
