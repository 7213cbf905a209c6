import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { dayOf } from '../day-of.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { runningReadings } from '../queries/follow-ups.ts';
import { unfinishedTests, type UnfinishedTest } from '../queries/tests.ts';
import type { StandingDue } from './standing-due.ts';

const DAY_MS = 86_400_000;

/** What running tests wait for, and outdated ones to be finished again. @param sampleIds `null`: of all samples */
export function unfinishedDue(notebook: OpenNotebook, sampleIds: readonly string[] | null): StandingDue[] {
  return unfinishedTests(notebook.store, sampleIds).flatMap((test) => {
    const title = notebook.methods.findOfTest(test)?.shortTitle ?? test.methodId;
    if (test.state === 'outdated') return [outdatedResult(test, title)];
    return nextReadings(notebook, test) ?? [slowTest(test, title)];
  });
}

/** What a running test waits for by its own plan; `null` where it has none, and then a day is long. */
function nextReadings({ store }: OpenNotebook, { methodId, testId, sampleId, sampleCode, startedAt }: UnfinishedTest): StandingDue[] | null {
  const dueWhileRunning = allMethods.find(({ id }) => id === methodId)?.dueWhileRunning;
  const due = dueWhileRunning?.({ ...runningReadings(store, testId), startedOn: dayOf(startedAt) }) ?? [];
  if (due.length === 0) return null;
  return due.map(({ what, dueOn, why }) => ({ kind: 'test', what: `${what}: ${sampleCode}`, why, dueOn, sampleId, testId }));
}

function slowTest({ testId, sampleId, sampleCode, startedAt }: UnfinishedTest, title: string): StandingDue {
  const dueAt = Date.parse(startedAt) + DAY_MS;
  return {
    kind: 'test',
    what: `Finish ${title} on ${sampleCode}`,
    why: `Started ${dayOf(startedAt)} and still running after more than a day.`,
    dueOn: dayOf(new Date(dueAt)),
    shownFrom: dueAt,
    overdueWhenShown: true,
    sampleId,
    testId,
  };
}

function outdatedResult({ testId, sampleId, sampleCode }: UnfinishedTest, title: string): StandingDue {
  return {
    kind: 'test',
    what: `Finish ${title} on ${sampleCode} again`,
    why: 'Something was changed after it was finished; the stored result no longer follows from the readings.',
    dueOn: null,
    sampleId,
    testId,
  };
}
