import { z } from 'zod';
import { limitSchema } from '../method/property-verdict.ts';

/** What a plan is: the stresses that a print must endure, and the tests that they call for. */
const shortText = z.string().max(200);
const longText = z.string().max(20_000);

/** When a test is made: on the film before it is printed, or so many hours after it left the press or the laminator. */
export const momentSchema = z.strictObject({
  from: z.enum(['film', 'printing', 'lamination']),
  /** 0: on press, off the laminator. Always 0 for `film`. */
  hours: z.number().min(0).max(100_000),
});

export const planReasonSchema = z.strictObject({
  /** Id of the stress that asks for the test; '' where the lab itself does. */
  stress: z.string().max(40),
  /** One sentence. */
  text: z.string().min(1).max(1000),
});

/** One test of a plan. */
export const planLineSchema = z.strictObject({
  /** The same in every version of the plan. */
  lineId: z.string().min(1).max(200),
  methodId: z.string().min(1).max(100),
  moment: momentSchema,
  /** What the specimens go through before, e.g. 'after 24 h at −18 °C'; '' where nothing. */
  preparation: z.string().max(500),
  /** Conditions of the method that the plan fixes, by field key. */
  conditions: z.record(z.string().max(100), z.union([z.number(), z.string().max(500)])),
  /** Rows of the bench sheet: specimens, positions, exposures … */
  replicates: z.number().int().min(1).max(1000),
  limits: z.array(limitSchema).max(20),
  reasons: z.array(planReasonSchema).min(1).max(40),
});

/** A proposed test that the lab does not make. */
export const droppedLineSchema = planLineSchema.pick({ lineId: true, methodId: true, moment: true, preparation: true }).extend({ reason: z.string().trim().min(1).max(1000) });

export const planStressSchema = z.strictObject({
  stress: z.string().min(1).max(40),
  /** '' where the stress has no degrees. */
  degree: z.string().max(40),
});

/** One version of a plan. */
export const planContentSchema = z.strictObject({
  title: shortText.trim().min(1),
  product: shortText,
  customer: shortText,
  /** Id of the built-in end use that it began from, '' for none. */
  endUse: z.string().max(60),
  stresses: z.array(planStressSchema).max(40),
  lines: z.array(planLineSchema).min(1).max(100),
  dropped: z.array(droppedLineSchema).max(100),
  note: longText,
});

export type Moment = z.output<typeof momentSchema>;
export type PlanReason = z.output<typeof planReasonSchema>;
export type PlanLine = z.output<typeof planLineSchema>;
export type DroppedLine = z.output<typeof droppedLineSchema>;
export type PlanStress = z.output<typeof planStressSchema>;
export type PlanContent = z.output<typeof planContentSchema>;
