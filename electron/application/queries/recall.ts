import type { RecallView } from '../../../shared-lib/notebook/material-views.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { SAMPLE_IS_LISTED } from './holds-something.ts';

/** The lot itself and all that was made from it, to begin a query with; ends also where there is a loop. */
const MADE = `WITH RECURSIVE made(lotId) AS (SELECT ? UNION SELECT lot_part.lotId FROM lot_part JOIN made ON lot_part.partId = made.lotId),
  hit(sampleId) AS (SELECT DISTINCT sampleId FROM sample_lot WHERE lotId IN made)`;

/** `through`: the lot by which it is made from the one that is asked about, the newest. */
export function samplesOnLot(store: NotebookStore, lotId: string): RecallView['samples'] {
  return store
    .all<Omit<RecallView['samples'][number], 'disposedOf'> & { disposedOf: 0 | 1 }>(
      `${MADE} SELECT sampleId, code, product, job, roll, retiredAt IS NOT NULL AS disposedOf,
         (SELECT material.name || ', lot ' || lot.code FROM sample_lot JOIN lot USING (lotId) JOIN material USING (materialId)
          WHERE sample_lot.sampleId = sample.sampleId AND lotId IN made ORDER BY lot.addedSeq DESC LIMIT 1) AS through
       FROM sample WHERE sampleId IN hit AND ${SAMPLE_IS_LISTED} ORDER BY addedSeq`,
      [lotId],
    )
    .map((sample) => ({ ...sample, disposedOf: sample.disposedOf === 1 }));
}

export function testIdsOnLot(store: NotebookStore, lotId: string): string[] {
  return store.all<{ testId: string }>(`${MADE} SELECT testId FROM test WHERE sampleId IN hit ORDER BY startedSeq`, [lotId]).map(({ testId }) => testId);
}

/** Formulation trials that name such a lot among their components, or have such a sample. */
export function trialsOnLot(store: NotebookStore, lotId: string): RecallView['trials'] {
  return store.all<RecallView['trials'][number]>(
    `${MADE}, by_formulation(trialId) AS (SELECT DISTINCT trialId FROM trial, json_each(trial.components) AS component WHERE component.value ->> 'lotId' IN made),
       by_sample(trialId) AS (SELECT DISTINCT trialId FROM trial_sample WHERE sampleId IN hit)
     SELECT trialId, trialSetId, name, trial_set.title AS "set",
       CASE WHEN trialId NOT IN by_sample THEN 'formulation' WHEN trialId NOT IN by_formulation THEN 'sample' ELSE 'formulation and sample' END AS "by"
     FROM trial JOIN trial_set USING (trialSetId) WHERE trialId IN by_formulation OR trialId IN by_sample ORDER BY trial_set.addedSeq, trial.addedSeq`,
    [lotId],
  );
}

export function reportsOnLot(store: NotebookStore, lotId: string): RecallView['reports'] {
  return store
    .all<Omit<RecallView['reports'][number], 'replaced'> & { replaced: 0 | 1 }>(
      `${MADE} SELECT DISTINCT report.reportId, number, title, recipient, substr(issuedAt, 1, 10) AS issuedOn, replacedBy IS NOT NULL AS replaced
       FROM report JOIN report_test USING (reportId) JOIN test USING (testId) WHERE test.sampleId IN hit ORDER BY issuedSeq`,
      [lotId],
    )
    .map((report) => ({ ...report, replaced: report.replaced === 1 }));
}

/** Press approvals that name such a lot or sample, or stand on a test of such a sample. */
export function approvalsOnLot(store: NotebookStore, lotId: string): RecallView['approvals'] {
  return store.all<RecallView['approvals'][number]>(
    `${MADE} SELECT approvalId, 'job ' || job || CASE product WHEN '' THEN '' ELSE ', ' || product END AS title, customer, pressRun,
       CASE WHEN replacedSeq IS NOT NULL THEN 'replaced' WHEN withdrawnSeq IS NOT NULL THEN 'withdrawn' WHEN signedSeq IS NOT NULL THEN 'signed' ELSE 'draft' END AS state
     FROM approval WHERE approvalId IN (SELECT approvalId FROM approval_lot WHERE lotId IN made)
       OR approvalId IN (SELECT approvalId FROM approval_sample WHERE sampleId IN hit)
       OR approvalId IN (SELECT approvalId FROM approval_line JOIN test USING (testId) WHERE test.sampleId IN hit) ORDER BY draftedSeq`,
    [lotId],
  );
}
