import { z } from 'zod';
import { resultValueSchema } from '../calculation/result.ts';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);

/** What is compared across the trials of a set: a property of a method, and which way it should go. */
export const responseSchema = z.strictObject({
  methodId: z.string().min(1).max(100),
  property: z.string().min(1).max(100),
  goal: z.enum(['higher', 'lower', 'target']),
  /** The best value, for `goal: 'target'`; the value that is good enough for the others. `null`: the best mean found. */
  target: z.number().nullable(),
  /** Below (`highest`: above) this the trial is of no use; `null`: the worst mean found. */
  lowest: z.number().nullable(),
  highest: z.number().nullable(),
  /** In the overall desirability; 0 leaves the response out of it. */
  weight: z.number().min(0).max(100),
});

/** What is varied on purpose from trial to trial, e.g. the share of wax. */
export const factorSchema = z.strictObject({ key: z.string().min(1).max(60), label: shortText.min(1), unit: z.string().max(40) });

/** One line of a formulation. Unknown solids and cost are `null`, never 0. */
export const componentSchema = z.strictObject({
  name: shortText.min(1),
  materialId: id.nullable(),
  lotId: id.nullable(),
  /** By mass. */
  parts: z.number().min(0).max(1e9),
  solidsPct: z.number().min(0).max(100).nullable(),
  /** In the currency of the lab. */
  costPerKg: z.number().min(0).max(1e9).nullable(),
});

/** What a person decides about a trial. */
export const trialFields = {
  name: z.string().min(1).max(100),
  /** The formulation that the others are compared with; at most one in a set. */
  control: z.boolean(),
  components: z.array(componentSchema).max(100),
  /** By factor key; a factor that is not stated is absent. */
  factors: z.record(z.string().max(60), z.number()),
  note: longText,
};

export const studyReadingSchema = z.strictObject({ part: shortText.min(1), appraiser: shortText.min(1), trial: shortText.min(1), value: z.number() });

/** Entries about formulation trials and measurement studies. */
export const trialEntryBodies = {
  'trialSet.added': z.strictObject({
    trialSetId: id,
    title: shortText.min(1),
    /** What the trials are to answer. */
    question: longText,
    product: shortText,
  }),
  'responses.set': z.strictObject({ trialSetId: id, responses: z.array(responseSchema).max(40), reason: longText }),
  'factors.set': z.strictObject({ trialSetId: id, factors: z.array(factorSchema).max(20), reason: longText }),
  'trial.added': z.strictObject({ trialId: id, trialSetId: id, ...trialFields }),
  'trial.changed': z.strictObject({ trialId: id, ...trialFields, reason: longText.min(1) }),
  'sample.linked': z.strictObject({ trialId: id, sampleId: id }),
  'sample.unlinked': z.strictObject({ trialId: id, sampleId: id, reason: longText.min(1) }),
  /** How far apart readings of the same parts are, by who reads and how often: the result is attached to the method. */
  'study.recorded': z.strictObject({
    studyId: id,
    methodId: z.string().min(1).max(100),
    /** Of an in-house method: the version it was made by. */
    methodVersion: z.string().max(40).optional(),
    property: z.string().min(1).max(100),
    kind: z.enum(['number', 'grade']),
    readings: z.array(studyReadingSchema).min(1).max(2000),
    calculationVersion: z.string(),
    results: z.record(z.string(), resultValueSchema),
    remark: longText,
  }),
} as const;

export type Response = z.output<typeof responseSchema>;
export type Factor = z.output<typeof factorSchema>;
export type Component = z.output<typeof componentSchema>;
export type StudyReading = z.output<typeof studyReadingSchema>;
