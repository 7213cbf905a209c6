import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { FollowedPlan } from '../../../../shared-lib/notebook/plan-views.ts';
import { conditionAgainstPlan } from '../../condition-against-plan.ts';
import { followedPlan, lineOfSample } from '../../followed-plan.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { followedPlanOf, testsOfLines, type StoredFollowedPlan } from '../../queries/plans.ts';
import { findSample } from '../../queries/samples.ts';
import { loadTest } from '../../queries/tests.ts';
import { Refusal } from '../../refusal.ts';
import { requireReason } from '../../require-reason.ts';
import type { Workplace } from '../../workplace.ts';
import { requirePlan } from './plans.ts';

/** The plan that a sample follows and how far each of its tests has come; `null` for none. */
export function getSamplePlan(workplace: Workplace, { sampleId }: ParsedInput<'samplePlan.get'>): FollowedPlan | null {
  const { notebook } = workplace;
  requireSample(notebook, sampleId);
  return followedPlan(notebook, sampleId, workplace.now());
}

/** Takes up the newest version of a plan. */
export function followPlan(workplace: Workplace, { sampleId, planId, reason, ...times }: ParsedInput<'samplePlan.follow'>): FollowedPlan {
  const { notebook } = workplace;
  requireSample(notebook, sampleId);
  const { title, version, retired } = requirePlan(notebook, planId);
  if (retired) throw new Refusal('conflict', `The plan ${title} is retired; no further sample takes it up.`);
  checkTimes(times);
  const before = followedPlanOf(notebook.store, sampleId);
  if (before && before.planId === planId && before.version === version) throw new Refusal('conflict', `The sample follows version ${version} of this plan already.`);
  if (before) requireReason(reason, 'The sample followed a plan before');
  notebook.append([{ kind: 'plan.followed', body: { sampleId, planId, version, ...times, reason: reason.trim() } }]);
  return followedPlan(notebook, sampleId, workplace.now())!;
}

/** States when the sample left press and laminator. Moving a time that was stated needs a reason. */
export function setPlanTimes(workplace: Workplace, { sampleId, reason, ...times }: ParsedInput<'samplePlan.setTimes'>): FollowedPlan {
  const { notebook } = workplace;
  const before = requireFollowed(notebook, sampleId);
  checkTimes(times);
  const moved = (key: keyof typeof times) => before[key] !== null && before[key] !== times[key];
  if (moved('printedAt') || moved('laminatedAt')) requireReason(reason, 'The time was stated before');
  if (before.printedAt !== times.printedAt || before.laminatedAt !== times.laminatedAt) {
    notebook.append([{ kind: 'plan.followed', body: { sampleId, planId: before.planId, version: before.version, ...times, reason: reason.trim() } }]);
  }
  return followedPlan(notebook, sampleId, workplace.now())!;
}

export function leavePlan({ notebook }: Workplace, { sampleId, reason }: ParsedInput<'samplePlan.leave'>): { sampleId: string } {
  requireFollowed(notebook, sampleId);
  requireReason(reason, 'What the plan asks for is no longer due on this sample');
  notebook.append([{ kind: 'plan.left', body: { sampleId, reason: reason.trim() } }]);
  return { sampleId };
}

/** A test that the sample has already is the one that a line asks for. */
export function takeTestForLine(workplace: Workplace, { sampleId, lineId, testId }: ParsedInput<'samplePlan.takeTest'>): FollowedPlan {
  const { notebook } = workplace;
  const { planId, line } = lineOfSample(notebook, sampleId, lineId);
  const test = loadTest(notebook.store, testId);
  if (test.sampleId !== sampleId) throw new InputError('testId', testId, 'This test was made on another sample.');
  if ([...testsOfLines(notebook.store, sampleId, planId).values()].includes(testId)) throw new InputError('testId', testId, 'This test stands for a line of the plan already; each line asks for a test of its own.');
  if (test.methodId !== line.methodId) throw new InputError('testId', testId, 'This test was made by another method than the plan asks for.');
  const other = conditionAgainstPlan(line, notebook.methods.ofTest(test), test.conditions);
  if (other) throw new InputError('testId', testId, `This test was made under another condition than the plan asks for: ${other.label}.`);
  notebook.append([{ kind: 'planLine.tested', body: { sampleId, planId, lineId, testId, replicates: line.replicates } }]);
  return followedPlan(notebook, sampleId, workplace.now())!;
}

function requireSample({ store }: OpenNotebook, sampleId: string): void {
  if (!findSample(store, sampleId)) throw new Refusal('not-found', 'This sample is not in the notebook.');
}

function requireFollowed({ store }: OpenNotebook, sampleId: string): StoredFollowedPlan {
  const followed = followedPlanOf(store, sampleId);
  if (!followed) throw new Refusal('not-found', 'This sample follows no plan.');
  return followed;
}

/** Film is laminated once it is printed. */
function checkTimes({ printedAt, laminatedAt }: { printedAt: string | null; laminatedAt: string | null }): void {
  if (printedAt !== null && laminatedAt !== null && Date.parse(laminatedAt) < Date.parse(printedAt)) {
    throw new InputError('laminatedAt', laminatedAt, 'The sample cannot be laminated before it was printed.');
  }
}
