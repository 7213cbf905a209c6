import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { groupBy } from './group-by.ts';

export type StoredApproval = Tables['approval'];
export type StoredApprovalLine = Tables['approval_line'];

/** A finished test of a sample that stands for a press run, as it is offered for a line. */
export interface TestOfRun {
  testId: string;
  sampleId: string;
  sampleCode: string;
  roll: string;
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

/** Neither signed nor withdrawn. */
export function isDraft(store: NotebookStore, approvalId: string): boolean {
  return store.one('SELECT 1 FROM approval WHERE approvalId = ? AND signedSeq IS NULL AND withdrawnSeq IS NULL', [approvalId]) !== undefined;
}

/** Of a job: its code and what it is. */
export type SampleOfJob = Pick<Tables['sample'], 'sampleId' | 'code' | 'product' | 'job' | 'roll' | 'customer' | 'addedAt'>;

const SAMPLES = 'SELECT sampleId, code, product, job, roll, customer, addedAt FROM sample';

/** That stand for the press run: those that were named for it in their order, or where nobody named any all of the job. */
export function samplesOfApproval(store: NotebookStore, { approvalId, job, samplesSaid }: Pick<StoredApproval, 'approvalId' | 'job' | 'samplesSaid'>): SampleOfJob[] {
  if (samplesSaid === 0) return samplesOfJob(store, job);
  return store.all<SampleOfJob>(`${SAMPLES} JOIN approval_sample USING (sampleId) WHERE approvalId = ? ORDER BY place`, [approvalId]);
}

/** In the order in which they were added. */
export function samplesOfJob(store: NotebookStore, job: string): SampleOfJob[] {
  return store.all<SampleOfJob>(`${SAMPLES} WHERE job <> '' AND lower(job) = lower(?) ORDER BY addedSeq`, [job]);
}

/** Finished tests of samples, newest first. */
export function finishedTestsOf(store: NotebookStore, samples: readonly { sampleId: string }[]): TestOfRun[] {
  return store.all<TestOfRun>(
    `SELECT test.testId, test.sampleId, sample.code AS sampleCode, sample.roll, test.methodId, test.methodVersion, test.finishedAt, test.verdicts, planned_test.planId, planned_test.lineId
     FROM test JOIN sample USING (sampleId) LEFT JOIN planned_test USING (testId)
     WHERE test.sampleId IN (SELECT value FROM json_each(?)) AND test.state = 'finished' AND test.withdrawn = '' ORDER BY test.finishedSeq DESC`,
    [JSON.stringify(samples.map(({ sampleId }) => sampleId))],
  );
}

/** Tests that ever filled a line, by line, the newest first. */
export function testsEverLinked(store: NotebookStore, approvalId: string): Map<string, string[]> {
  const links = store.all<Tables['approval_link']>('SELECT * FROM approval_link WHERE approvalId = ? ORDER BY seq DESC', [approvalId]);
  return new Map([...groupBy(links, ({ lineId }) => lineId)].map(([lineId, ofLine]) => [lineId, ofLine.map(({ testId }) => testId)]));
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

/** Whether a test that is or was finished belongs to a job of which an approval is being drafted: it may fill a line, or overtake what was seen. */
export function isOfDraft(store: NotebookStore, testId: string): boolean {
  return (
    store.one(
      `SELECT 1 FROM test JOIN sample USING (sampleId) JOIN approval ON lower(approval.job) = lower(sample.job)
       WHERE testId = ? AND test.finishedSeq IS NOT NULL AND signedSeq IS NULL AND withdrawnSeq IS NULL`,
      [testId],
    ) !== undefined
  );
}

/** Signed, neither withdrawn nor replaced, and standing on a test that was corrected since, or among `approvalIds`; oldest first. */
export function approvalsInDoubt(store: NotebookStore, approvalIds: readonly string[]): StoredApproval[] {
  return store.all<StoredApproval>(
    `SELECT * FROM approval WHERE signedSeq IS NOT NULL AND withdrawnSeq IS NULL AND replacedSeq IS NULL
       AND (EXISTS (SELECT 1 ${CORRECTED} AND approval_line.approvalId = approval.approvalId) OR approvalId IN (SELECT value FROM json_each(?))) ORDER BY draftedSeq`,
    [JSON.stringify(approvalIds)],
  );
}
