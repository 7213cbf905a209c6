import type { Caution } from '../method/method.ts';
import type { PlanContent, PlanLine } from '../plan/plan.ts';
import type { PropertyLine } from './views.ts';

/** A plan in lists. */
export interface PlanHeading {
  planId: string;
  title: string;
  product: string;
  customer: string;
  /** Title of the built-in end use that it began from, '' for none. */
  endUse: string;
  /** That samples take from now on. */
  version: string;
  tests: number;
  /** Samples that follow any version of it. */
  samples: number;
  retired: boolean;
}

export interface Plan extends PlanHeading {
  retiredReason: string;
  /** Of `version`. */
  content: PlanContent;
  /** Newest first. */
  versions: PlanVersion[];
}

export interface PlanVersion {
  version: string;
  content: PlanContent;
  writtenAt: string;
  writtenBy: string;
  /** What is different from the version before, and why; nothing for the first. */
  changes: string[];
  reason: string;
  /** Samples that follow this version. */
  samples: number;
}

/**
 * How far a test of a plan has come on a sample. `not started`: the time that its moment counts from is not stated.
 * `tested`: finished, and no limit to compare with. `too few`: finished with fewer complete rows than the plan asks for.
 * `outdated`: changed after it was finished.
 */
export type PlanLineState = 'not started' | 'to come' | 'due' | 'overdue' | 'running' | 'outdated' | 'too few' | 'tested' | 'meets' | 'falls short' | 'undecided';

/** The plan that a sample follows, in the version that it took up. */
export interface FollowedPlan {
  sampleId: string;
  planId: string;
  title: string;
  version: string;
  /** Of the plan now; another than `version` where it was changed since. */
  newestVersion: string;
  printedAt: string | null;
  laminatedAt: string | null;
  /** One sentence where tests are still to be made after the day until which the sample is kept; '' otherwise. */
  keptTooShort: string;
  lines: FollowedLine[];
}

export interface FollowedLine {
  line: PlanLine;
  methodTitle: string;
  /** '3 specimens'. */
  replicatesText: string;
  momentText: string;
  cautions: Caution[];
  state: PlanLineState;
  /** '3 of 10 positions': complete rows of the finished test where they are fewer than asked for; '' otherwise. */
  tooFew: string;
  /** ISO 8601 with time; `null` while the time that the moment counts from is not stated. */
  dueAt: string | null;
  /** The test that the line was last given. */
  testId: string | null;
  /** Of that test once it is finished, each compared with the limit of the plan. */
  results: PropertyLine[];
  /** Limits of the line in words: 'Print retained ≥ 95 % (common practice)'. */
  limitTexts: string[];
  /** Tests of the sample by this method, under the conditions of the line, that no line has yet: newest first. */
  mayTake: { testId: string; startedAt: string; state: 'running' | 'finished' | 'outdated' }[];
}
