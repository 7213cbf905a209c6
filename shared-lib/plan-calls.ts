import { z } from 'zod';
import { call } from './api-call.ts';
import type { FollowedPlan, Plan, PlanHeading } from './notebook/plan-views.ts';
import type { BenchSheetView } from './notebook/views.ts';
import { planContentSchema } from './plan/plan.ts';

const id = z.string().min(1).max(64);
const text = z.string().max(20_000);
const lineId = z.string().min(1).max(200);
const instant = z.iso.datetime().nullable();

/** The calls about plans and the samples that follow them. */
export const planCalls = {
  'plans.list': call<PlanHeading[]>()(z.strictObject({})),
  'plan.get': call<Plan>()(z.strictObject({ planId: id })),
  'plan.add': call<Plan>()(z.strictObject({ content: planContentSchema })),
  /** Makes a version; samples that follow the plan keep theirs. */
  'plan.change': call<Plan>()(z.strictObject({ planId: id, content: planContentSchema, reason: text })),
  'plan.retire': call<Plan>()(z.strictObject({ planId: id, reason: text })),
  /** One page; `version` left out: the newest. */
  'plan.pdf': call<{ fileName: string; bytes: string }>()(z.strictObject({ planId: id, version: z.string().max(10).optional() })),

  'samplePlan.get': call<FollowedPlan | null>()(z.strictObject({ sampleId: id })),
  /** Takes up the newest version of a plan, or states other times. A reason is asked for once the sample followed one. */
  'samplePlan.follow': call<FollowedPlan>()(z.strictObject({ sampleId: id, planId: id, printedAt: instant, laminatedAt: instant, reason: text.default('') })),
  /** States when the sample left press and laminator; the version stays. */
  'samplePlan.setTimes': call<FollowedPlan>()(z.strictObject({ sampleId: id, printedAt: instant, laminatedAt: instant, reason: text.default('') })),
  'samplePlan.leave': call<{ sampleId: string }>()(z.strictObject({ sampleId: id, reason: text })),
  /** Starts the test that a line asks for, with its conditions, limits and rows. */
  'samplePlan.startLine': call<BenchSheetView>()(z.strictObject({ sampleId: id, lineId })),
  /** A test that was made without the plan is the one that a line asks for. */
  'samplePlan.takeTest': call<FollowedPlan>()(z.strictObject({ sampleId: id, lineId, testId: id })),
} as const;
