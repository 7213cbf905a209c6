import { z } from 'zod';
import { call } from './api-call.ts';
import type { Approval, ApprovalHeading, JobFacts } from './notebook/approval-views.ts';
import { signing } from './person-calls.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
const lineId = z.string().min(1).max(200);

/** The calls about press approvals. */
export const approvalCalls = {
  'approvals.list': call<ApprovalHeading[]>()(z.strictObject({})),
  'approval.get': call<Approval>()(z.strictObject({ approvalId: id })),
  /** What the notebook knows about a job; nothing about one that it does not know. */
  'approval.job': call<JobFacts>()(z.strictObject({ job: line })),
  /** From the newest version of a plan. */
  'approval.draft': call<Approval>()(
    z.strictObject({
      planId: z.string().max(64),
      product: line,
      job: line,
      customer: line,
      pressRun: line,
      lotIds: z.array(id).max(50),
      /** Samples of the job that stand for the press run. */
      sampleIds: z.array(id).max(50),
      note: text,
      /** Why it takes the place of the signed approval of the same job and press run; needed where there is one. */
      replacesReason: text.default(''),
    }),
  ),
  /** A draft; `sampleIds: null` leaves it at all samples of the job, where nobody has said which. */
  'approval.change': call<Approval>()(
    z.strictObject({ approvalId: id, product: line, customer: line, lotIds: z.array(id).max(50), sampleIds: z.array(id).max(50).nullable(), note: text, reason: text.default('') }),
  ),
  'approvalLine.add': call<Approval>()(z.strictObject({ approvalId: id, title: line })),
  'approvalLine.drop': call<Approval>()(z.strictObject({ approvalId: id, lineId, reason: text })),
  /** A reason is needed where something filled the line already. */
  'approvalLine.link': call<Approval>()(z.strictObject({ approvalId: id, lineId, testId: id, reason: text.default('') })),
  /** Takes for every open line of the plan the test that is offered first. */
  'approval.linkOffered': call<Approval>()(z.strictObject({ approvalId: id })),
  'approvalLine.observe': call<Approval>()(z.strictObject({ approvalId: id, lineId, inOrder: z.boolean(), remark: text, reason: text.default(''), ...signing })),
  /** Each line is signed for. */
  'approvalLines.waive': call<Approval>()(z.strictObject({ approvalId: id, lineIds: z.array(lineId).min(1).max(200), reason: text, ...signing })),
  /** `digest` is that of the approval as it was read: what changed since is not signed unseen. */
  'approval.sign': call<Approval>()(z.strictObject({ approvalId: id, digest: z.string().length(64), ...signing })),
  'approval.withdraw': call<Approval>()(z.strictObject({ approvalId: id, reason: text, ...signing })),
  /** The page of a signed approval, as it was frozen. */
  'approval.pdf': call<{ fileName: string; bytes: string }>()(z.strictObject({ approvalId: id })),
} as const;
