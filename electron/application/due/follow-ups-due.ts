import { allMethods } from '../../../shared-lib/registry/methods.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { finishedReadings, isTestedAfter, lastFinishedTestsBy } from '../queries/follow-ups.ts';
import type { StandingDue } from './standing-due.ts';

/**
 * What the results of finished tests ask for, until a later test of the sample has settled it or the sample was disposed of.
 * @param sampleIds `null`: of all samples
 */
export function followUpsDue({ store }: OpenNotebook, sampleIds: readonly string[] | null): StandingDue[] {
  return allMethods.flatMap(({ id, followUp }) =>
    followUp
      ? lastFinishedTestsBy(store, id, sampleIds).flatMap(({ testId, sampleId, sampleCode, startedSeq }) =>
          followUp(finishedReadings(store, testId))
            .filter(({ settledBy }) => !isTestedAfter(store, sampleId, settledBy, startedSeq))
            .map(({ what, dueOn, why }) => ({ kind: 'follow-up', what: `${what}: ${sampleCode}`, why, dueOn, sampleId, testId })),
        )
      : [],
  );
}
