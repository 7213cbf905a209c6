import type { ParsedInput } from '../../../shared-lib/api.ts';
import { dueKinds, type DueCount, type DueLine, type TodayView } from '../../../shared-lib/notebook/today-view.ts';
import type { TestLine } from '../../../shared-lib/notebook/views.ts';
import { dayOf } from '../day-of.ts';
import { keepingDue } from '../due/keeping-due.ts';
import type { StandingDue } from '../due/standing-due.ts';
import { countInState, testIdsInState } from '../queries/tests.ts';
import { testLine } from '../test-line.ts';
import type { Workplace } from '../workplace.ts';

const RECENT = 10;

/** What runs, what no longer follows from its readings, what was finished last, and what is due. */
export function today(workplace: Workplace, { of, mostOverdue, mostNext, mostRunning, mostOutdated }: ParsedInput<'today.get'>): TodayView {
  const { notebook } = workplace;
  const { store } = notebook;
  const now = workplace.now();
  const day = dayOf(now);
  const standing = workplace.dues.all(notebook);
  const due = [...standing, ...keepingDue(store, day, standing)].filter(({ shownFrom = 0 }) => shownFrom <= now.getTime());
  const dayOn = ({ dueOn }: StandingDue) => dueOn ?? day;
  const isOverdue = (one: StandingDue) => one.overdueWhenShown === true || dayOn(one) < day;
  const lines = (overdue: boolean, most: number): DueLine[] =>
    due
      .filter((one) => (of === '' || one.kind === of) && isOverdue(one) === overdue)
      .sort((a, b) => (dayOn(a) < dayOn(b) ? -1 : dayOn(a) > dayOn(b) ? 1 : 0))
      .slice(0, most)
      .map(({ shownFrom: _from, overdueWhenShown: _when, ...line }) => ({ ...line, dueOn: line.dueOn ?? day, overdue }));
  const tests = (state: TestLine['state'], most: number) => testIdsInState(store, state, most).map((testId) => testLine(notebook, testId));
  return {
    day,
    running: tests('running', mostRunning),
    outdated: tests('outdated', mostOutdated),
    recentlyFinished: tests('finished', RECENT),
    testCounts: { running: countInState(store, 'running'), outdated: countInState(store, 'outdated') },
    due: [...lines(true, mostOverdue), ...lines(false, mostNext)],
    dueCounts: countsOf(due, isOverdue),
  };
}

function countsOf(due: StandingDue[], isOverdue: (one: StandingDue) => boolean): DueCount[] {
  const counts = new Map(dueKinds.map((kind) => [kind, { kind, overdue: 0, next: 0 }]));
  for (const one of due) counts.get(one.kind)![isOverdue(one) ? 'overdue' : 'next'] += 1;
  return [...counts.values()].filter(({ overdue, next }) => overdue + next > 0);
}
