import type { NotebookStore } from '../../store/notebook-store.ts';
import { dayOf } from '../day-of.ts';
import { lastTestsOfFilmLots } from '../queries/film-lots.ts';
import type { Change } from './changes-since.ts';
import type { StandingDue } from './standing-due.ts';

const DAY_MS = 86_400_000;
/** Common practice: treated film is tested again after a month in store; no standard sets the time. */
const RETEST_DAYS = 30;
const WETTING_METHOD = 'test-fluids';

/** Film lots in use whose treatment is to be tested again. */
export function retestsDue(store: NotebookStore): StandingDue[] {
  return lastTestsOfFilmLots(store, WETTING_METHOD).map(({ material, code, testedAt, sampleId }) => {
    const dueAt = Date.parse(testedAt) + RETEST_DAYS * DAY_MS;
    return {
      kind: 'treatment',
      what: `Test the treatment of ${material}, lot ${code}, again`,
      why: `Last tested ${dayOf(testedAt)}; treatment decays, and film in store is tested again after ${RETEST_DAYS} days (common practice).`,
      dueOn: dayOf(new Date(dueAt)),
      shownFrom: dueAt,
      overdueWhenShown: true,
      sampleId,
      testId: '',
    };
  });
}

/** Whether a change may make a retest due, or settle one. */
export function isRetest({ kind, methodId }: Change): boolean {
  return /^(lot|material|sample)\./.test(kind) || (kind === 'test.finished' && methodId === WETTING_METHOD);
}
