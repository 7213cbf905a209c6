import type { VerdictWord } from '../../../shared-lib/method/property-verdict.ts';
import type { ApprovalResult } from '../../../shared-lib/notebook/approval-views.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import { dayOf } from '../day-of.ts';
import { isAsPlanned } from '../followed-plan.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import type { StoredApproval, TestOfRun } from '../queries/approvals.ts';
import { loadTest } from '../queries/tests.ts';
import { lineResult } from './line-result.ts';

/** Common practice, from memory; no standard sets it: a release stands on results of the run, not of a month before. */
const OLD_DAYS = 30;
const DAY_MS = 86_400_000;
const fromWorst: VerdictWord[] = ['falls short', 'undecided', 'meets', 'no limit'];

/** That a result was finished long before the approval was drafted. */
export function ageDoubts({ finishedAt }: ApprovalResult, { draftedAt }: Pick<StoredApproval, 'draftedAt'>): string[] {
  if (Date.parse(draftedAt) - Date.parse(finishedAt) <= OLD_DAYS * DAY_MS) return [];
  return [`Finished on ${dayOf(finishedAt)}, more than ${OLD_DAYS} days before the approval was drafted (${OLD_DAYS} days: common practice).`];
}

/**
 * Other tests of the approval's samples, by the same method under the same conditions, that came out worse than the linked one: one sentence each.
 * @param planned the line; `null` where a person added it, so that the linked test says what is alike
 */
export function worseDoubts(notebook: OpenNotebook, { testId, verdict = 'no limit' }: ApprovalResult, fitting: readonly TestOfRun[], planned: PlanLine | null): string[] {
  const { methodId, conditions } = loadTest(notebook.store, testId);
  const alike = { conditions: planned?.conditions ?? Object.fromEntries(Object.entries(conditions).flatMap(([key, { value }]) => (value === null ? [] : [[key, value]]))) };
  const said = fitting
    .filter((test) => test.testId !== testId && test.methodId === methodId && isAsPlanned(notebook, alike, test.testId))
    .flatMap((test) => {
      const other = lineResult(notebook, test.testId, planned?.limits ?? []).verdict;
      if (other === 'meets' || fromWorst.indexOf(other) >= fromWorst.indexOf(verdict)) return [];
      return [`Also on ${test.sampleCode}${test.roll ? ` (${test.roll})` : ''}, finished ${dayOf(test.finishedAt)}: ${other}.`];
    });
  return [...new Set(said)];
}
