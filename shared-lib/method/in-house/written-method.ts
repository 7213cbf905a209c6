import { z } from 'zod';

/**
 * An in-house method as a lab writes it down, and as it stands in the record and in a method file. `inHouseMethod` makes a
 * method of it. Keys name readings, settings and properties for good: a new version keeps those of what it takes over.
 */
const key = z.string().regex(/^[a-z][A-Za-z0-9]{0,39}$/, 'A key is letters and digits and begins with a small letter.');
const name = z.string().trim().min(1).max(100);
const unit = z.string().trim().max(20);
const sentence = z.string().trim().min(1).max(500);
const end = z.number().min(-1e9).max(1e9).nullable();

const hazards = ['toxic', 'solvent', 'uv', 'ozone', 'blade', 'heat', 'food-contact', 'electrical'] as const;

/** What is held the same, or written down each time where `value` is `null` or ''. */
const settingSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('number'),
    key,
    label: name,
    unit,
    value: end,
    /** A test that departs from the value by more is flagged. */
    tolerance: z.number().min(0).max(1e9).nullable(),
  }),
  z.strictObject({ kind: z.literal('text'), key, label: name, value: z.string().trim().max(200) }),
  /** What it is read with: one of the notebook's instruments, whose calibration is watched. */
  z.strictObject({ kind: z.literal('instrument'), key, label: name }),
]);

const gradeSchema = z.strictObject({
  grade: z.number().min(-100).max(100),
  /** What one sees: 'ink comes off at the edges'. */
  meaning: z.string().trim().min(1).max(300),
  /** A photograph of it, an attachment of the notebook. */
  pictureSha256: z.string().regex(/^[0-9a-f]{64}$/).optional(),
});

const readingSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('number'),
    key,
    label: name,
    unit,
    lowest: end,
    highest: end,
    /** A reading may be 'or more': the end was not reached. */
    orMore: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('count'), key, label: name, unit, orMore: z.boolean() }),
  z.strictObject({ kind: z.literal('grade'), key, label: name, grades: z.array(gradeSchema).min(2).max(21) }),
  z.strictObject({
    kind: z.literal('yes-no'),
    key,
    label: name,
    /** In words, what passes and what does not: 'holds', 'gives way'. */
    yes: z.string().trim().min(1).max(60),
    no: z.string().trim().min(1).max(60),
  }),
]);

export const statistics = ['mean', 'median', 'minimum', 'maximum', 'share-passing', 'median-grade', 'change-pct', 'ratio', 'count-per-area'] as const;

const propertySchema = z.strictObject({
  key,
  title: name,
  /** Key of the reading it is worked out from. */
  reading: key,
  statistic: z.enum(statistics),
  /** Of a change or a ratio: key of the reading that it is against, the one before. */
  against: key.nullable(),
  /** Of a share passing: where a reading passes. Of a yes or no `null`: yes passes. */
  passes: z.strictObject({ lower: end, upper: end }).nullable(),
  /** Of a count per area: what one row looks at. */
  areaCm2: z.number().positive().max(1e8).nullable(),
  better: z.enum(['higher', 'lower', 'within', 'none']),
  headline: z.boolean(),
  /** The limit that a test starts with. */
  limit: z.strictObject({ lower: end, upper: end, source: z.string().trim().max(200) }).nullable(),
});

export const writtenMethodSchema = z.strictObject({
  title: z.string().trim().min(1).max(120),
  /** '' where the title is short enough for lists. */
  shortTitle: z.string().trim().max(40),
  shows: z.string().trim().min(1).max(1000),
  how: z.array(sentence).max(40),
  spoils: z.array(sentence).max(40),
  standards: z.array(z.string().trim().min(1).max(60)).max(20),
  cautions: z.array(z.strictObject({ hazard: z.enum(hazards), text: sentence })).max(20),
  settings: z.array(settingSchema).max(30),
  /** 'specimen', 'place': one row of the sheet. */
  rowName: z.string().trim().min(1).max(30),
  replicates: z.int().min(1).max(100),
  readings: z.array(readingSchema).min(1).max(12),
  properties: z.array(propertySchema).min(1).max(20),
});

/** Where a method that was taken in from a file comes from. */
export const methodOriginSchema = z.strictObject({
  methodId: z.string().min(1).max(64),
  version: z.string().regex(/^[1-9]\d{0,5}$/),
  laboratory: z.string().max(200),
  notebook: z.string().max(200),
  writtenBy: z.string().max(200),
  writtenOn: z.iso.date(),
});

export type WrittenMethod = z.output<typeof writtenMethodSchema>;
export type WrittenSetting = WrittenMethod['settings'][number];
export type WrittenReading = WrittenMethod['readings'][number];
export type WrittenProperty = WrittenMethod['properties'][number];
export type WrittenGrade = z.output<typeof gradeSchema>;
export type MethodOrigin = z.output<typeof methodOriginSchema>;
export type Statistic = (typeof statistics)[number];
