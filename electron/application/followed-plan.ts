import type { Method } from '../../shared-lib/method/method.ts';
import type { FollowedLine, FollowedPlan } from '../../shared-lib/notebook/plan-views.ts';
import type { TestLine } from '../../shared-lib/notebook/views.ts';
import { dueAt } from '../../shared-lib/plan/due-at.ts';
import { lineLimitTexts, replicatesText } from '../../shared-lib/plan/line-texts.ts';
import { momentText } from '../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../shared-lib/plan/plan.ts';
import { planLineState } from './plan-line-state.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { findPlan, findPlanVersion, followedPlanOf, testsOfLines, testsWithoutLine, type StoredFollowedPlan } from './queries/plans.ts';
import { Refusal } from './refusal.ts';
import { testLine } from './test-line.ts';

/** The plan that a sample follows, line by line; `null` where it follows none. */
export function followedPlan(notebook: OpenNotebook, sampleId: string, now: Date): FollowedPlan | null {
  const followed = followedPlanOf(notebook.store, sampleId);
  return followed ? viewOf(notebook, followed, now) : null;
}

/** @throws Refusal when the sample follows no plan or its plan has no such line */
export function lineOfSample({ store }: OpenNotebook, sampleId: string, lineId: string): { planId: string; line: PlanLine } {
  const followed = followedPlanOf(store, sampleId);
  if (!followed) throw new Refusal('not-found', 'This sample follows no plan.');
  const line = findPlanVersion(store, followed.planId, followed.version)?.content.lines.find((candidate) => candidate.lineId === lineId);
  if (!line) throw new Refusal('not-found', 'The plan of this sample has no such test.');
  return { planId: followed.planId, line };
}

function viewOf(notebook: OpenNotebook, followed: StoredFollowedPlan, now: Date): FollowedPlan {
  const { store } = notebook;
  const { sampleId, planId, version, printedAt, laminatedAt } = followed;
  const { content } = findPlanVersion(store, planId, version)!;
  const tests = testsOfLines(store, sampleId, planId);
  const without = testsWithoutLine(store, sampleId);
  return {
    sampleId,
    planId,
    title: content.title,
    version,
    newestVersion: findPlan(store, planId)!.version,
    printedAt,
    laminatedAt,
    lines: content.lines.map((line) => {
      const testId = tests.get(line.lineId) ?? null;
      const mayTake = without.filter(({ methodId }) => methodId === line.methodId).map(({ methodId: _same, ...test }) => test);
      return lineView(line, notebook.methods.find(line.methodId), followed, testId === null ? null : testLine(notebook, testId), mayTake, now);
    }),
  };
}

function lineView(line: PlanLine, method: Method | undefined, times: StoredFollowedPlan, test: TestLine | null, mayTake: FollowedLine['mayTake'], now: Date): FollowedLine {
  const due = dueAt(line.moment, times);
  return {
    line,
    methodTitle: method?.title ?? line.methodId,
    replicatesText: replicatesText(line, method),
    momentText: momentText(line.moment),
    cautions: method?.cautions ?? [],
    state: planLineState(test, due, now),
    dueAt: due,
    testId: test?.testId ?? null,
    results: test?.headline ?? [],
    limitTexts: lineLimitTexts(line, method),
    mayTake,
  };
}
