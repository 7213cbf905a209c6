import { z } from 'zod';
import { resultValueSchema } from '../calculation/result.ts';
import { limitSchema, propertyVerdictSchema, verdictRuleSchema } from '../method/property-verdict.ts';
import { approvalEntryBodies } from './approval-entries.ts';
import { attachmentEntryBodies } from './attachment-entries.ts';
import { colourEntryBodies } from './colour-entries.ts';
import { equipmentEntryBodies } from './equipment-entries.ts';
import { inHouseEntryBodies } from './in-house-entries.ts';
import { layersSchema, lotDetailsSchema, materialEntryBodies } from './material-entries.ts';
import { mergeEntryBodies } from './merge-entries.ts';
import { notebookEntryBodies } from './notebook-entries.ts';
import { personEntryBodies } from './person-entries.ts';
import { planEntryBodies } from './plan-entries.ts';
import { sampleDetailsSchema, sampleEntryBodies } from './sample-entries.ts';
import { trialEntryBodies } from './trial-entries.ts';
import { witnessEntryBodies } from './witness-entries.ts';

export type { PropertyVerdict, VerdictWord } from '../method/property-verdict.ts';

/**
 * The kinds of entry and their bodies. A body never changes meaning: what must change gets a new kind.
 * Ids of things (`sampleId` …) are ULIDs made by the application.
 */
const id = z.string().min(1).max(64);
const shortText = z.string().max(200);
const longText = z.string().max(20_000);
const day = z.iso.date();

export const cellValueSchema = z.union([z.number(), z.string().max(20_000), z.null()]);

export const materialKindSchema = z.enum(['film', 'ink', 'adhesive', 'laminate', 'solvent', 'coating', 'other']);

export const entryBodies = {
  'notebook.created': z.strictObject({ title: shortText, laboratory: shortText }),
  'person.added': z.strictObject({ personId: id, name: shortText, initials: z.string().min(1).max(5), role: shortText }),
  'material.added': z.strictObject({
    materialId: id,
    kind: materialKindSchema,
    name: shortText,
    supplier: shortText,
    /** Structure, thickness, chemistry … as the lab writes it, e.g. 'PET 12 µm / ink / adhesive / PE 60 µm'. */
    description: longText,
    /** Its structure; absent: not said. */
    layers: layersSchema.optional(),
  }),
  'lot.added': z.strictObject({
    lotId: id,
    materialId: id,
    code: shortText,
    receivedOn: day.nullable(),
    note: longText,
    /** Absent: nothing said. */
    details: lotDetailsSchema.optional(),
  }),
  'sample.added': z.strictObject({
    sampleId: id,
    code: shortText,
    product: shortText,
    job: shortText,
    roll: shortText,
    note: longText,
    lotIds: z.array(id).max(50),
    /** Absent: nothing said. */
    details: sampleDetailsSchema.optional(),
  }),
  'test.started': z.strictObject({
    testId: id,
    sampleId: id,
    methodId: z.string().max(100),
    methodVersion: z.string().max(40),
    conditions: z.record(z.string(), cellValueSchema),
    limits: z.array(limitSchema).max(40),
    rule: verdictRuleSchema,
  }),
  'limits.set': z.strictObject({ testId: id, limits: z.array(limitSchema).max(40), rule: verdictRuleSchema, reason: longText }),
  'condition.entered': z.strictObject({ testId: id, key: z.string().max(100), value: cellValueSchema, typed: z.string().max(20_000) }),
  'condition.corrected': z.strictObject({
    testId: id,
    key: z.string().max(100),
    before: cellValueSchema,
    value: cellValueSchema,
    typed: z.string().max(20_000),
    reason: longText.min(1),
  }),
  'reading.entered': z.strictObject({
    testId: id,
    row: z.string().max(20),
    key: z.string().max(100),
    value: cellValueSchema,
    /** The keystrokes as typed, e.g. '38,5'. */
    typed: z.string().max(20_000),
  }),
  'reading.corrected': z.strictObject({
    testId: id,
    row: z.string().max(20),
    key: z.string().max(100),
    before: cellValueSchema,
    value: cellValueSchema,
    typed: z.string().max(20_000),
    reason: longText.min(1),
  }),
  /** A row that counts no more, by a person's decision and with the reason; it stays visible. */
  'row.voided': z.strictObject({ testId: id, row: z.string().max(20), reason: longText.min(1) }),
  'row.restored': z.strictObject({ testId: id, row: z.string().max(20), reason: longText.min(1) }),
  'row.remarked': z.strictObject({ testId: id, row: z.string().max(20), remark: longText }),
  'attachment.added': z.strictObject({
    sha256: z.string().length(64),
    name: shortText,
    mediaType: z.string().max(100),
    size: z.number().int().nonnegative(),
  }),
  /** A CSV trace read into a cell: the file as an attachment and how its columns were read. The cell's value is `traceId`. */
  'trace.read': z.strictObject({
    traceId: id,
    testId: id,
    row: z.string().max(20),
    key: z.string().max(100),
    sha256: z.string().length(64),
    reading: z.strictObject({
      delimiter: z.string().max(1),
      decimal: z.enum(['.', ',']),
      headerLines: z.number().int().nonnegative(),
      displacementColumn: z.number().int().nonnegative(),
      displacementUnit: z.enum(['mm', 'cm', 'm', 'in']),
      forceColumn: z.number().int().nonnegative(),
      forceUnit: z.enum(['N', 'mN', 'kN', 'gf', 'kgf', 'lbf']),
      block: z.number().int().nonnegative(),
    }),
    points: z.number().int().positive(),
    reason: longText,
  }),
  'test.finished': z.strictObject({
    testId: id,
    calculation: z.string(),
    calculationVersion: z.string(),
    results: z.record(z.string(), resultValueSchema),
    verdicts: z.array(propertyVerdictSchema),
    remark: longText,
  }),
  'report.issued': z.strictObject({
    reportId: id,
    number: shortText,
    title: shortText,
    recipient: shortText,
    remark: longText,
    testIds: z.array(id).min(1).max(200),
    /** Attachments: the frozen content (JSON) and the PDF made from it. */
    contentSha256: z.string().length(64),
    pdfSha256: z.string().length(64),
    /** The report that this one takes the place of, with the reason. */
    replaces: z.strictObject({ reportId: id, reason: longText.min(1) }).nullable(),
  }),
  ...notebookEntryBodies,
  ...trialEntryBodies,
  ...inHouseEntryBodies,
  ...colourEntryBodies,
  ...attachmentEntryBodies,
  ...personEntryBodies,
  ...mergeEntryBodies,
  ...witnessEntryBodies,
  ...planEntryBodies,
  ...approvalEntryBodies,
  ...materialEntryBodies,
  ...sampleEntryBodies,
  ...equipmentEntryBodies,
} as const;

export type EntryKind = keyof typeof entryBodies;
export type EntryBody<Kind extends EntryKind> = z.output<(typeof entryBodies)[Kind]>;

/** An entry before the store has given it its place in the record. */
export type DraftEntry = { [Kind in EntryKind]: { kind: Kind; body: EntryBody<Kind>; by: string; occurredAt: string } }[EntryKind];

/** One immutable line of the record. `hash` = SHA-256 over the RFC 8785 form of the entry without `hash`. */
export type Entry = DraftEntry & {
  /** Its place in this notebook: 1, 2, 3 … without gaps. */
  seq: number;
  /** Of an entry that was brought in from another notebook: the place that it has there and was sealed with. */
  sealedSeq?: number;
  /** ULID. */
  id: string;
  /** ISO 8601 with milliseconds, UTC: when the store took it. */
  recordedAt: string;
  /** Hash of the entry before; 64 zeros for the first. */
  previous: string;
  hash: string;
};

export type MaterialKind = z.output<typeof materialKindSchema>;
export type TraceReading = EntryBody<'trace.read'>['reading'];
