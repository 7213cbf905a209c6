import type { DueLine } from '../../../shared-lib/notebook/today-view.ts';

/** Something to do whatever the day is, so that it need not be worked out anew each day. */
export interface StandingDue extends Omit<DueLine, 'dueOn' | 'overdue'> {
  /** ISO 8601 date; `null`: each day until it is done. */
  dueOn: string | null;
  /** Moment from which it is shown (ms since 1970); left out: at once. */
  shownFrom?: number;
  /** It is overdue as soon as it is shown, and not only when its day is over. */
  overdueWhenShown?: boolean;
}
