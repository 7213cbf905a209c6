import { z } from 'zod';
import { blockingStates } from '../approval/line-state.ts';
import { signatureSchema } from './signature.ts';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);
const version = z.string().regex(/^[1-9]\d{0,5}$/);
/** Of the plan, or the ULID of a line that a person added. */
const lineId = z.string().min(1).max(200);
/** The test that filled the line until then; left out: none. */
const insteadOf = id.optional();

/** What is said of a press approval besides its job, press run and plan, and may change while it is a draft. */
const approvalFields = z.strictObject({
  product: shortText,
  customer: shortText,
  lotIds: z.array(id).max(50),
  /** That stand for the press run; `null`: all samples of the job, in drafts that did not say. */
  sampleIds: z.array(id).max(50).nullable(),
  note: longText,
});

/** Entries about press approvals: a checklist for one job, drawn from one version of a plan. */
export const approvalEntryBodies = {
  /** The lines are those of the plan's version. */
  'approval.drafted': z.strictObject({
    approvalId: id,
    planId: id,
    version,
    product: shortText,
    job: shortText.min(1),
    customer: shortText,
    pressRun: shortText,
    lotIds: z.array(id).max(50),
    /** That stand for the press run; left out by those that did not say: all samples of the job. */
    sampleIds: z.array(id).max(50).optional(),
    note: longText,
    /** The signed approval whose place it takes once it is signed itself. */
    replaces: z.strictObject({ approvalId: id, reason: longText.min(1) }).nullable(),
  }),
  /** Of a draft. It gives its reason where it takes the place of something said. */
  'approval.changed': z.strictObject({ approvalId: id, before: approvalFields, after: approvalFields, reason: longText }),
  'approvalLine.added': z.strictObject({ approvalId: id, lineId, title: shortText.min(1) }),
  /** Only of a line that a person added; those of the plan are waived. */
  'approvalLine.dropped': z.strictObject({ approvalId: id, lineId, reason: longText.min(1) }),
  /** A finished test of the job fills the line. `finishedId`: id of the entry by which it was finished then. */
  'approvalLine.linked': z.strictObject({ approvalId: id, lineId, result: z.strictObject({ testId: id, finishedId: id }), insteadOf, reason: longText }),
  'approvalLine.observed': z.strictObject({ approvalId: id, lineId, inOrder: z.boolean(), remark: longText, insteadOf, reason: longText, signature: signatureSchema }),
  /** Holds for as long as the line stands as it did: `of`. */
  'approvalLine.waived': z.strictObject({ approvalId: id, lineId, of: z.enum(blockingStates), reason: longText.min(1), signature: signatureSchema }),
  'approval.signed': z.strictObject({
    approvalId: id,
    /** Attachments: what was signed (JSON), and the page made from it. */
    contentSha256: z.string().length(64),
    pdfSha256: z.string().length(64),
    /** Whose place it takes from now on. */
    replaces: id.nullable(),
    signature: signatureSchema,
  }),
  'approval.withdrawn': z.strictObject({ approvalId: id, reason: longText.min(1), signature: signatureSchema }),
} as const;

export type ApprovalFields = z.output<typeof approvalFields>;
