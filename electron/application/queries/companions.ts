import type { PropertyVerdict } from '../../../shared-lib/method/property-verdict.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { knownTo } from './merges.ts';
import type { StoredTest } from './tests.ts';

const MOST_LOOKED_AT = 200;

/**
 * Finished earlier, by the same method, on the same product, against the same reference. This is asked at every reading, so the
 * reference comes first (CROSS JOIN keeps that order): its index leads past all tests against others.
 */
const ALIKE = `FROM condition
  CROSS JOIN test AS earlier ON earlier.testId = condition.testId AND condition.key = 'reference' AND condition.value = ?1
    AND earlier.methodId = ?2 AND earlier.state = 'finished' AND earlier.finishedSeq < ?3
  JOIN sample ON sample.sampleId = earlier.sampleId AND sample.product = (SELECT product FROM sample WHERE sampleId = ?4)`;

/**
 * The test that stands for the last approved lot, of those finished before this one was started, by the same method, on the
 * same product, against the same reference: that of the last press approval which was signed and stood when this one was
 * started; where there is none, the newest that meets its limits. This is the one place that decides.
 */
export function lastApprovedTest(store: NotebookStore, test: StoredTest): string | null {
  const reference = test.conditions.reference?.value ?? null;
  if (reference === null) return null;
  const known = knownTo(store, test.startedSeq);
  const before = (seq: number | null) => seq !== null && seq < test.startedSeq && known(seq);
  const parameters = [reference, test.methodId, test.startedSeq, test.sampleId, MOST_LOOKED_AT];
  const signed = store
    .all<{ testId: string; finishedSeq: number; signedSeq: number; withdrawnSeq: number | null; replacedSeq: number | null }>(
      `SELECT earlier.testId, earlier.finishedSeq, signedSeq, withdrawnSeq, replacedSeq ${ALIKE}
       JOIN approval_line ON approval_line.testId = earlier.testId JOIN approval USING (approvalId) WHERE signedSeq < ?3 ORDER BY signedSeq DESC, earlier.finishedSeq DESC LIMIT ?5`,
      parameters,
    )
    .find(({ finishedSeq, signedSeq, withdrawnSeq, replacedSeq }) => known(finishedSeq) && known(signedSeq) && !before(withdrawnSeq) && !before(replacedSeq));
  if (signed) return signed.testId;
  return (
    store
      .all<{ testId: string; verdicts: string; finishedSeq: number }>(
        `SELECT earlier.testId, earlier.verdicts, earlier.finishedSeq ${ALIKE} ORDER BY earlier.finishedSeq DESC LIMIT ?5`,
        parameters,
      )
      .find(({ verdicts, finishedSeq }) => known(finishedSeq) && worstVerdict((JSON.parse(verdicts) as PropertyVerdict[]).map(({ verdict }) => verdict)) === 'meets')?.testId ?? null
  );
}

/** The newest test by the same method on the sample that is the control: a finished one before one that runs. */
export function testOfControl(store: NotebookStore, test: StoredTest): string | null {
  const control = test.conditions.control?.value ?? null;
  if (control === null) return null;
  return (
    store.one<{ testId: string }>(
      `SELECT testId FROM test WHERE sampleId = ? AND methodId = ? AND testId <> ?
       ORDER BY state = 'finished' DESC, coalesce(finishedSeq, startedSeq) DESC LIMIT 1`,
      [control, test.methodId, test.testId],
    )?.testId ?? null
  );
}

/** The sample that stands for the control of the trial set in which a sample is; the newest where there are several. */
export function controlOfTrialSet(store: NotebookStore, sampleId: string): { sampleId: string; code: string } | null {
  return store.one<{ sampleId: string; code: string }>(
    `SELECT sample.sampleId, sample.code FROM trial_sample AS own
     JOIN trial AS tried ON tried.trialId = own.trialId
     JOIN trial AS control ON control.trialSetId = tried.trialSetId AND control.control = 1
     JOIN trial_sample AS link ON link.trialId = control.trialId
     JOIN sample ON sample.sampleId = link.sampleId
     WHERE own.sampleId = ?1 AND sample.sampleId <> ?1 ORDER BY link.seq DESC LIMIT 1`,
    [sampleId],
  ) ?? null;
}
