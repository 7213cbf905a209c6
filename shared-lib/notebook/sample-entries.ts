import { z } from 'zod';

const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);
const reason = longText.min(1);

/** What is said of a sample besides its code, product, job and roll. */
export const sampleDetailsSchema = z.strictObject({
  customer: shortText,
  /** Where it was cut: across the web from the operator side, in mm. */
  acrossMm: z.number().min(0).max(20_000).nullable(),
  /** Along the roll from its outer end, in m. */
  alongM: z.number().min(0).max(1_000_000).nullable(),
  keptAt: shortText,
  /** The last day on which it is kept. */
  retainedUntil: z.iso.date().nullable(),
});

/** Nothing said. */
export const noSampleDetails: SampleDetails = { customer: '', acrossMm: null, alongM: null, keptAt: '', retainedUntil: null };

const sampleFields = sampleDetailsSchema.extend({
  code: shortText.min(1),
  product: shortText,
  job: shortText,
  roll: shortText,
  note: longText,
  lotIds: z.array(id).max(50),
});

/** Entries about a sample beyond its first. A change gives its reason where it takes the place of something said. */
export const sampleEntryBodies = {
  'sample.changed': z.strictObject({ sampleId: id, before: sampleFields, after: sampleFields, reason: longText }),
  /** Disposed of; its tests stay. */
  'sample.retired': z.strictObject({ sampleId: id, reason, /** Where its return is undone: why it was disposed of before. */ before: longText.optional() }),
  'sample.returned': z.strictObject({ sampleId: id, reason }),
} as const;

export type SampleDetails = z.output<typeof sampleDetailsSchema>;
export type SampleFields = z.output<typeof sampleFields>;
