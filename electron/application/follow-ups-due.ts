import type { FollowUp, Method } from '../../shared-lib/method/method.ts';
import type { TodayView } from '../../shared-lib/notebook/views.ts';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { finishedReadings, finishedTestsBy, isTestedAfter, type FinishedTest } from './queries/follow-ups.ts';

/** What the results of finished tests ask for, until a later test of the sample has settled it or the sample was disposed of. */
export function followUpsDue(notebook: OpenNotebook, today: string): TodayView['due'] {
  const { store } = notebook;
  return allMethods.flatMap(({ id, followUp }) =>
    followUp
      ? finishedTestsBy(store, id).flatMap((test) =>
          askedBy(notebook, test, followUp)
            .filter(({ settledBy }) => !isTestedAfter(store, test.sampleId, settledBy, test.startedSeq))
            .map(({ what, dueOn, why }) => ({ what: `${what}: ${test.sampleCode}`, why, dueOn, overdue: dueOn < today, sampleId: test.sampleId, testId: test.testId })),
        )
      : [],
  );
}

/** Worked out once for each time that a test was finished: Today is asked for after every entry. */
function askedBy({ store, followUps }: OpenNotebook, { testId, finishedSeq }: FinishedTest, followUp: NonNullable<Method['followUp']>): FollowUp[] {
  const known = followUps.get(testId);
  if (known?.finishedSeq === finishedSeq) return known.asked;
  const asked = followUp(finishedReadings(store, testId));
  followUps.set(testId, { finishedSeq, asked });
  return asked;
}
