import type { TestLine, TodayView } from '../../../shared-lib/notebook/views.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { approvalsDue } from '../approvals/approvals-due.ts';
import { dayOf } from '../day-of.ts';
import { followUpsDue } from '../follow-ups-due.ts';
import { keepingDue } from '../keeping-due.ts';
import { planLinesDue } from '../plan-lines-due.ts';
import { filmLotsNotTestedSince } from '../queries/film-lots.ts';
import { runningReadings } from '../queries/follow-ups.ts';
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
  const now = workplace.now();
  const day = dayOf(now);
  const due = [
    ...running.flatMap((line) => nextReadings(workplace, line, day) ?? slowTest(line, now.getTime())),
    ...outdated.map((line) => outdatedResult(line, day)),
    ...followUpsDue(notebook, day),
    ...planLinesDue(notebook, now),
    ...retests(workplace, now.getTime()),
    ...keepingDue(notebook.store, day),
    ...approvalsDue(notebook, day),
  ];
  return { running, outdated, recentlyFinished: lines('finished', RECENT), due: due.sort((a, b) => a.dueOn.localeCompare(b.dueOn)) };
}

type Due = TodayView['due'][number];

/** What a running test waits for by its own plan; `null` where it has none, and then a day is long. */
function nextReadings({ notebook: { store } }: Workplace, { methodId, testId, sampleId, sampleCode, startedAt }: TestLine, day: string): Due[] | null {
  const dueWhileRunning = allMethods.find(({ id }) => id === methodId)?.dueWhileRunning;
  const due = dueWhileRunning?.({ ...runningReadings(store, testId), startedOn: dayOf(startedAt) }) ?? [];
  if (due.length === 0) return null;
  return due.map(({ what, dueOn, why }) => ({ what: `${what}: ${sampleCode}`, why, dueOn, overdue: dueOn < day, sampleId, testId }));
}

function slowTest(line: TestLine, now: number): Due[] {
  const dueAt = Date.parse(line.startedAt) + DAY_MS;
  if (dueAt > now) return [];
  return [
    {
      what: `Finish ${line.methodTitle} on ${line.sampleCode}`,
      why: `Started ${dayOf(line.startedAt)} and still running after more than a day.`,
      dueOn: dayOf(new Date(dueAt)),
      overdue: true,
      sampleId: line.sampleId,
      testId: line.testId,
    },
  ];
}

function outdatedResult(line: TestLine, day: string): Due {
  return {
    what: `Finish ${line.methodTitle} on ${line.sampleCode} again`,
    why: 'Something was changed after it was finished; the stored result no longer follows from the readings.',
    dueOn: day,
    overdue: false,
    sampleId: line.sampleId,
    testId: line.testId,
  };
}

function retests({ notebook }: Workplace, now: number): Due[] {
  const before = new Date(now - RETEST_DAYS * DAY_MS).toISOString();
  return filmLotsNotTestedSince(notebook.store, WETTING_METHOD, before).map((lot) => {
    const dueAt = Date.parse(lot.testedAt) + RETEST_DAYS * DAY_MS;
    return {
      what: `Test the treatment of ${lot.material}, lot ${lot.code}, again`,
      why: `Last tested ${dayOf(lot.testedAt)}; treatment decays, and film in store is tested again after ${RETEST_DAYS} days (common practice).`,
      dueOn: dayOf(new Date(dueAt)),
      overdue: true,
      sampleId: lot.sampleId,
      testId: '',
    };
  });
}
