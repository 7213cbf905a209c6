import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

export type StoredApproval = Tables['approval'];
export type StoredApprovalLine = Tables['approval_line'];

/** A finished test of a job, as it is offered for a line. */
export interface TestOfJob {
  testId: string;
  sampleCode: string;
  methodId: string;
  methodVersion: string;
  finishedAt: string;
  /** JSON: `PropertyVerdict[]`. */
  verdicts: string;
  /** The line of a plan that it was made for, if any. */
  planId: string | null;
  lineId: string | null;
}

/** Newest first. */
export function listApprovals(store: NotebookStore): StoredApproval[] {
  return store.all<StoredApproval>('SELECT * FROM approval ORDER BY draftedSeq DESC');
}

/** Neither signed nor withdrawn, oldest first. */
export function draftedApprovals(store: NotebookStore): StoredApproval[] {
  return store.all<StoredApproval>('SELECT * FROM approval WHERE signedSeq IS NULL AND withdrawnSeq IS NULL ORDER BY draftedSeq');
}

export function findApproval(store: NotebookStore, approvalId: string): StoredApproval | undefined {
  return store.one<StoredApproval>('SELECT * FROM approval WHERE approvalId = ?', [approvalId]);
}

/** Approvals of a job that are neither withdrawn nor replaced: drafts and signed ones. */
export function approvalsOfJob(store: NotebookStore, job: string): StoredApproval[] {
  return store.all<StoredApproval>('SELECT * FROM approval WHERE lower(job) = lower(?) AND withdrawnSeq IS NULL AND replacedSeq IS NULL ORDER BY draftedSeq', [job]);
}

/** Only lines that were filled, waived or added; those that were added in their order. */
export function linesOfApproval(store: NotebookStore, approvalId: string): StoredApprovalLine[] {
  return store.all<StoredApprovalLine>('SELECT * FROM approval_line WHERE approvalId = ? ORDER BY addedSeq', [approvalId]);
}

/** Lines that a person added to those of the plan. */
export function countAddedLines(store: NotebookStore, approvalId: string): number {
  return store.one<{ lines: number }>('SELECT count(*) AS lines FROM approval_line WHERE approvalId = ? AND addedSeq > 0', [approvalId])!.lines;
}

/** In the order in which they were added. */
export function samplesOfJob(store: NotebookStore, job: string): { sampleId: string; code: string; product: string; job: string }[] {
  return store.all("SELECT sampleId, code, product, job FROM sample WHERE job <> '' AND lower(job) = lower(?) ORDER BY addedSeq", [job]);
}

/** Finished tests of the job's samples, newest first. */
export function finishedTestsOfJob(store: NotebookStore, job: string): TestOfJob[] {
  return store.all<TestOfJob>(
    `SELECT test.testId, sample.code AS sampleCode, test.methodId, test.methodVersion, test.finishedAt, test.verdicts, planned_test.planId, planned_test.lineId
     FROM test JOIN sample USING (sampleId) LEFT JOIN planned_test USING (testId)
     WHERE sample.job <> '' AND lower(sample.job) = lower(?) AND test.state = 'finished' ORDER BY test.finishedSeq DESC`,
    [job],
  );
}

/** Id of the entry by which a test was finished last; `undefined` while it is not. */
export function finishingEntry(store: NotebookStore, testId: string): string | undefined {
  return store.one<{ id: string }>('SELECT entry.id FROM test JOIN entry ON entry.seq = test.finishedSeq WHERE test.testId = ?', [testId])?.id;
}

/** Lines whose test does not stand any more as it was linked. */
const CORRECTED = `FROM approval_line JOIN test USING (testId) LEFT JOIN entry ON entry.seq = test.finishedSeq
  WHERE (test.state <> 'finished' OR entry.id IS NOT approval_line.finishedId)`;

/** Tests that the approval stands on and that do not stand any more as they were linked. */
export function correctedTests(store: NotebookStore, approvalId: string): string[] {
  return store.all<{ testId: string }>(`SELECT test.testId ${CORRECTED} AND approval_line.approvalId = ? ORDER BY test.startedSeq`, [approvalId]).map(({ testId }) => testId);
}

/** Whether a test fills a line of any approval. */
export function isInApproval(store: NotebookStore, testId: string): boolean {
  return store.one('SELECT 1 FROM approval_line WHERE testId = ?', [testId]) !== undefined;
}

/** Signed, neither withdrawn nor replaced, and standing on a test that was corrected since; oldest first. */
export function approvalsCorrectedLater(store: NotebookStore): StoredApproval[] {
  return store.all<StoredApproval>(
    `SELECT * FROM approval WHERE signedSeq IS NOT NULL AND withdrawnSeq IS NULL AND replacedSeq IS NULL
       AND EXISTS (SELECT 1 ${CORRECTED} AND approval_line.approvalId = approval.approvalId) ORDER BY draftedSeq`,
  );
}
