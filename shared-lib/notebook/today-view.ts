import type { TestLine } from './views.ts';

/** What something that is due is about, in the order in which it is counted. */
export const dueKinds = ['test', 'follow-up', 'plan', 'treatment', 'approval', 'instrument', 'fluid', 'lot', 'sample'] as const;

export type DueKind = (typeof dueKinds)[number];

/** Something to do. */
export interface DueLine {
  kind: DueKind;
  what: string;
  /** More of it, in smaller text; absent: none. */
  detail?: string;
  why: string;
  /** ISO 8601 date. */
  dueOn: string;
  overdue: boolean;
  /** '' where it is about none. */
  sampleId: string;
  /** '' where it is about none. */
  testId: string;
  /** A press approval; absent: none. */
  approvalId?: string;
  /** A lot; absent: none. */
  lotId?: string;
  /** An instrument or test fluid; absent: none. */
  equipmentId?: string;
}

export interface DueCount {
  kind: DueKind;
  overdue: number;
  /** Due today or later. */
  next: number;
}

/** The first of everything, and how much there is of it. */
export interface TodayView {
  /** ISO 8601 date. */
  day: string;
  /** Newest first. */
  running: TestLine[];
  outdated: TestLine[];
  recentlyFinished: TestLine[];
  testCounts: { running: number; outdated: number };
  /** What is overdue, the longest first; then what is next. */
  due: DueLine[];
  /** Of everything that is due, whichever kind was asked for; none of a kind: left out. */
  dueCounts: DueCount[];
}
