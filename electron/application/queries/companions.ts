import type { PropertyVerdict } from '../../../shared-lib/method/property-verdict.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { StoredTest } from './tests.ts';

const MOST_LOOKED_AT = 200;

/**
 * The test that stands for the last approved lot: the newest one that was finished before this one was started, by the same
 * method, on the same product, against the same reference, and that meets its limits. A signed press approval of such a test
 * will go before the verdict: this is the one place that decides.
 */
export function lastApprovedTest(store: NotebookStore, test: StoredTest): string | null {
  const reference = test.conditions.reference?.value ?? null;
  if (reference === null) return null;
  return (
    store
      .all<{ testId: string; verdicts: string }>(
        `SELECT earlier.testId, earlier.verdicts FROM test AS earlier
         JOIN sample ON sample.sampleId = earlier.sampleId
         JOIN condition ON condition.testId = earlier.testId AND condition.key = 'reference' AND condition.value = ?1
         WHERE earlier.methodId = ?2 AND earlier.state = 'finished' AND earlier.finishedSeq < ?3
           AND sample.product = (SELECT product FROM sample WHERE sampleId = ?4)
         ORDER BY earlier.finishedSeq DESC LIMIT ?5`,
        [reference, test.methodId, test.startedSeq, test.sampleId, MOST_LOOKED_AT],
      )
      .find(({ verdicts }) => worstVerdict((JSON.parse(verdicts) as PropertyVerdict[]).map(({ verdict }) => verdict)) === 'meets')?.testId ?? null
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
