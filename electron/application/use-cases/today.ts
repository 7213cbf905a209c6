import type { TestLine, TodayView } from '../../../shared-lib/notebook/views.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { planLinesDue } from '../plan-lines-due.ts';
import { approvalsDue } from '../approvals/approvals-due.ts';
import { keepingDue } from '../keeping-due.ts';
import { filmLotsNotTestedSince } from '../queries/film-lots.ts';
import { finishedTestsBy, isTestedAfter, runningReadings } from '../queries/follow-ups.ts';
import { testIdsInState } from '../queries/tests.ts';
import { testLine } from '../test-line.ts';
import type { Workplace } from '../workplace.ts';

const DAY_MS = 86_400_000;
const MANY = 200;
const RECENT = 10;
/** Common practice: treated film is tested again after a month in store; no standard sets the time. */
const RETEST_DAYS = 30;
const WETTING_METHOD = 'test-fluids';

/** What runs, what no longer follows from its readings, what was finished last, and what is due. */
export function today(workplace: Workplace): TodayView {
  const { notebook } = workplace;
  const lines = (state: TestLine['state'], limit: number) => testIdsInState(notebook.store, state, limit).map((testId) => testLine(notebook, testId));
  const running = lines('running', MANY);
  const outdated = lines('outdated', MANY);
  const now = workplace.now().getTime();
  const due = [...running.flatMap((line) => nextReadings(workplace, line, now) ?? slowTest(line, now)), ...outdated.map((line) => outdatedResult(line, now)), ...followUps(workplace, now), ...planLinesDue(notebook, workplace.now()), ...retests(workplace, now), ...keepingDue(notebook.store, dayOf(now)), ...approvalsDue(notebook, dayOf(now))];
  return {
    running,
    outdated,
    recentlyFinished: lines('finished', RECENT),
    due: due.sort((a, b) => a.dueOn.localeCompare(b.dueOn)),
  };
}

type Due = TodayView['due'][number];

/** What a running test waits for by its own plan; `null` where it has none, and then a day is long. */
function nextReadings({ notebook: { store } }: Workplace, { methodId, testId, sampleId, sampleCode, startedAt }: TestLine, now: number): Due[] | null {
  const dueWhileRunning = allMethods.find(({ id }) => id === methodId)?.dueWhileRunning;
  const due = dueWhileRunning?.({ ...runningReadings(store, testId), startedOn: dayOf(Date.parse(startedAt)) }) ?? [];
  if (due.length === 0) return null;
  return due.map(({ what, dueOn, why }) => ({ what: `${what}: ${sampleCode}`, why, dueOn, overdue: dueOn < dayOf(now), sampleId, testId }));
}

function slowTest(line: TestLine, now: number): Due[] {
  const dueAt = Date.parse(line.startedAt) + DAY_MS;
  if (dueAt > now) return [];
  return [
    {
      what: `Finish ${line.methodTitle} on ${line.sampleCode}`,
      why: `Started ${dayOf(Date.parse(line.startedAt))} and still running after more than a day.`,
      dueOn: dayOf(dueAt),
      overdue: true,
      sampleId: line.sampleId,
      testId: line.testId,
    },
  ];
}

function outdatedResult(line: TestLine, now: number): Due {
  return {
    what: `Finish ${line.methodTitle} on ${line.sampleCode} again`,
    why: 'Something was changed after it was finished; the stored result no longer follows from the readings.',
    dueOn: dayOf(now),
    overdue: false,
    sampleId: line.sampleId,
    testId: line.testId,
  };
}

/** What the results of finished tests ask for, until a later test of the sample has settled it. */
function followUps({ notebook: { store } }: Workplace, now: number): Due[] {
  return allMethods.flatMap(({ id, followUp }) =>
    followUp
      ? finishedTestsBy(store, id).flatMap(({ testId, sampleId, sampleCode, startedSeq, ...test }) =>
          followUp(test)
            .filter(({ settledBy }) => !isTestedAfter(store, sampleId, settledBy, startedSeq))
            .map(({ what, dueOn, why }) => ({ what: `${what}: ${sampleCode}`, why, dueOn, overdue: dueOn < dayOf(now), sampleId, testId })),
        )
      : [],
  );
}

function retests({ notebook }: Workplace, now: number): Due[] {
  const before = new Date(now - RETEST_DAYS * DAY_MS).toISOString();
  return filmLotsNotTestedSince(notebook.store, WETTING_METHOD, before).map((lot) => {
    const dueAt = Date.parse(lot.testedAt) + RETEST_DAYS * DAY_MS;
    return {
      what: `Test the treatment of ${lot.material}, lot ${lot.code}, again`,
      why: `Last tested ${dayOf(Date.parse(lot.testedAt))}; treatment decays, and film in store is tested again after ${RETEST_DAYS} days (common practice).`,
      dueOn: dayOf(dueAt),
      overdue: true,
      sampleId: lot.sampleId,
      testId: '',
    };
  });
}

function dayOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}
