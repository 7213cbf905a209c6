import { z } from 'zod';
import { planContentSchema } from '../plan/plan.ts';

const id = z.string().min(1).max(64);
const longText = z.string().max(20_000);
const version = z.string().regex(/^[1-9]\d{0,5}$/);
const instant = z.iso.datetime().nullable();

/** Entries about plans and the samples that follow them. A version that stands in the record is never changed. */
export const planEntryBodies = {
  'plan.added': z.strictObject({ planId: id, version, content: planContentSchema }),
  /** The version that samples take from now on; those that follow the plan already keep theirs. Brings a retired plan back into use. */
  'plan.versioned': z.strictObject({
    planId: id,
    version,
    content: planContentSchema,
    /** What is different, one sentence each. */
    changes: z.array(z.string().max(2000)).max(500),
    reason: longText.min(1),
  }),
  /** No further sample takes it up; those that follow it go on. */
  'plan.retired': z.strictObject({ planId: id, reason: longText.min(1) }),
  /** A sample takes up a version of a plan; said again, the plan, its version or the times are others from then on. */
  'plan.followed': z.strictObject({ sampleId: id, planId: id, version, printedAt: instant, laminatedAt: instant, reason: longText }),
  'plan.left': z.strictObject({ sampleId: id, reason: longText.min(1) }),
  /** A test of the sample is the one that a line of its plan asks for. */
  'planLine.tested': z.strictObject({ sampleId: id, planId: id, lineId: z.string().min(1).max(200), testId: id, /** Rows to lay out. */ replicates: z.number().int().min(1).max(1000) }),
} as const;
