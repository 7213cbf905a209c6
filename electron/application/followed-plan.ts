import type { Method } from '../../shared-lib/method/method.ts';
import type { VerdictWord } from '../../shared-lib/method/property-verdict.ts';
import type { FollowedLine, FollowedPlan } from '../../shared-lib/notebook/plan-views.ts';
import type { PropertyLine } from '../../shared-lib/notebook/views.ts';
import type { TestState } from '../../shared-lib/notebook/test-state.ts';
import { dueAt } from '../../shared-lib/plan/due-at.ts';
import { lineLimitTexts, replicatesText } from '../../shared-lib/plan/line-texts.ts';
import { momentText } from '../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../shared-lib/plan/plan.ts';
import { lineResult } from './approvals/line-result.ts';
import { conditionAgainstPlan } from './condition-against-plan.ts';
import { dayOf } from './day-of.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { planLineState } from './plan-line-state.ts';
import { findPlan, findPlanVersion, followedPlanOf, testsOfLines, testsWithoutLine, type StoredFollowedPlan } from './queries/plans.ts';
import { findSample } from './queries/samples.ts';
import { loadTest } from './queries/tests.ts';
import { Refusal } from './refusal.ts';
import { tooFew, type TooFew } from './too-few.ts';

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
  const without = testsWithoutLine(store, sampleId, planId);
  const lines = content.lines.map((line) => {
    const mayTake = without
      .filter(({ methodId, testId }) => methodId === line.methodId && isAsPlanned(notebook, line, testId))
      .map(({ methodId: _same, ...test }) => test);
    return lineView(notebook, line, followed, tests.get(line.lineId) ?? null, mayTake, now);
  });
  return {
    sampleId,
    planId,
    title: content.title,
    version,
    newestVersion: findPlan(store, planId)!.version,
    printedAt,
    laminatedAt,
    keptTooShort: keptTooShort(findSample(store, sampleId)?.retainedUntil ?? null, lines),
    lines,
  };
}

/** What is disposed of cannot be tested. */
function keptTooShort(retainedUntil: string | null, lines: FollowedLine[]): string {
  const [last] = lines.flatMap(({ testId, tooFew: few, dueAt: due }) => (due !== null && (testId === null || few) ? [dayOf(due)] : [])).sort().reverse();
  return retainedUntil !== null && last && last > retainedUntil ? `The sample is kept until ${retainedUntil}, and the plan asks for tests until ${last}: keep it longer.` : '';
}

function lineView(notebook: OpenNotebook, line: PlanLine, times: StoredFollowedPlan, testId: string | null, mayTake: FollowedLine['mayTake'], now: Date): FollowedLine {
  const method: Method | undefined = notebook.methods.find(line.methodId);
  const due = dueAt(line.moment, times);
  const test = testId === null ? null : outcomeOf(notebook, line, testId);
  return {
    line,
    methodTitle: method?.title ?? line.methodId,
    replicatesText: replicatesText(line, method),
    momentText: momentText(line.moment),
    cautions: method?.cautions ?? [],
    state: planLineState(test && { ...test, enough: test.few === null }, due, now),
    tooFew: test?.few?.text ?? '',
    dueAt: due,
    testId,
    results: test?.results ?? [],
    limitTexts: lineLimitTexts(line, method),
    mayTake,
  };
}

/** Whether a test was made under the conditions that a line of a plan fixes. */
export function isAsPlanned({ store, methods }: OpenNotebook, line: Pick<PlanLine, 'conditions'>, testId: string): boolean {
  const test = loadTest(store, testId);
  const method = methods.findOfTest(test);
  return method !== undefined && conditionAgainstPlan(line, method, test.conditions) === null;
}

/** Compared with the limits of the plan, whatever limits the test itself was given. */
function outcomeOf(notebook: OpenNotebook, line: PlanLine, testId: string): { state: TestState; verdict: VerdictWord; results: PropertyLine[]; few: TooFew | null } {
  const { store, methods } = notebook;
  const { state } = loadTest(store, testId);
  if (state !== 'finished') return { state, verdict: 'no limit', results: [], few: null };
  const { result, verdict } = lineResult(notebook, testId, line.limits);
  return { state, verdict, results: result.properties, few: tooFew(store, testId, line, methods.find(line.methodId)) };
}
