import type { BlockingState } from '../approval/line-state.ts';

/** Press approvals and what fills their lines. See `tables.ts`. */
export interface ApprovalTables {
  /** What follows the draft is `null` or '' until it is signed, withdrawn or replaced. */
  approval: {
    approvalId: string;
    planId: string;
    version: string;
    product: string;
    job: string;
    customer: string;
    pressRun: string;
    note: string;
    /** 1: `approval_sample` holds those that stand for the press run; 0: all samples of the job do. */
    samplesSaid: 0 | 1;
    replaces: string | null;
    replacesReason: string;
    draftedAt: string;
    draftedBy: string;
    draftedSeq: number;
    contentSha256: string | null;
    pdfSha256: string | null;
    signedMeaning: string;
    signedBy: string | null;
    signedAt: string | null;
    signedSeq: number | null;
    withdrawnReason: string;
    withdrawnBy: string | null;
    withdrawnAt: string | null;
    withdrawnSeq: number | null;
    replacedBy: string | null;
    replacedSeq: number | null;
  };
  approval_lot: { approvalId: string; lotId: string; place: number };
  approval_sample: { approvalId: string; sampleId: string; place: number };
  /** Every test that ever filled a line. */
  approval_link: { approvalId: string; lineId: string; testId: string; seq: number };
  /** What fills a line of an approval: a linked result or an observation, and a waiver. A line of the plan has no row before. */
  approval_line: {
    approvalId: string;
    lineId: string;
    /** '' for a line of the plan. */
    title: string;
    /** 0 for a line of the plan. */
    addedSeq: number;
    testId: string | null;
    finishedId: string | null;
    linkedBy: string | null;
    linkedAt: string | null;
    inOrder: 0 | 1 | null;
    remark: string;
    observedBy: string | null;
    observedAt: string | null;
    waivedOf: BlockingState | null;
    waiverReason: string;
    waivedBy: string | null;
    waivedAt: string | null;
  };
}
