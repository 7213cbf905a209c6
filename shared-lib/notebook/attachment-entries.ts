import { z } from 'zod';
import { areaReadingSchema } from '../picture/area-reading.ts';

const id = z.string().min(1).max(64);
const sha256 = z.string().length(64);
const longText = z.string().max(20_000);

/** What a file can be attached to. */
export const attachedToSchema = z.enum(['sample', 'lot', 'material', 'test', 'method', 'instrument', 'fluid']);

const link = { sha256, attachedTo: attachedToSchema, attachedId: id };

/** How a photograph is measured. Region and threshold are those of the picture as it is shown, see `PhotoPreview`. */
export const photoReadingSchema = areaReadingSchema.extend({
  light: areaReadingSchema.shape.light.unwrap(),
  smooth: z.boolean(),
  /** Which of its colours counts; 'grey': how light it is. */
  channel: z.enum(['grey', 'red', 'green', 'blue']),
});

/** Entries about files that belong to something, and photographs that are measured. */
export const attachmentEntryBodies = {
  'attachment.linked': z.strictObject({ ...link, caption: z.string().max(200) }),
  'attachment.unlinked': z.strictObject({ ...link, reason: longText.min(1) }),
  /**
   * A photograph measured in a cell, whose value is then `photoId`. `planeSha256` is the attachment with the grey that was
   * measured (a PNG of the region's bounds): programs differ in how they decode a photograph, and the result must follow
   * from what is kept.
   */
  'photo.measured': z.strictObject({
    photoId: id,
    testId: id,
    row: z.string().max(20),
    key: z.string().max(100),
    sha256,
    planeSha256: sha256,
    reading: photoReadingSchema,
    reason: longText,
  }),
} as const;

export type AttachedTo = z.output<typeof attachedToSchema>;
export type PhotoReading = z.output<typeof photoReadingSchema>;
export type PhotoChannel = PhotoReading['channel'];
