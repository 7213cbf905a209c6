import { z } from 'zod';
import { call } from './api-call.ts';
import { attachedToSchema, photoReadingSchema } from './notebook/attachment-entries.ts';
import type { AttachmentCounts, AttachmentLine, PhotoPreview, PictureView } from './notebook/attachment-views.ts';
import type { BenchSheetView } from './notebook/views.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
const sha256 = z.string().length(64);
/** File content as base64, at most 24 MB of it; larger files are refused by the sentence of `decodeFile`. */
const fileBytes = z.string().max(36_000_000);
const to = { attachedTo: attachedToSchema, attachedId: id };

/** A photograph that is chosen now, or one that the notebook holds. */
const photoSource = z.union([z.strictObject({ name: line.min(1), bytes: fileBytes }), z.strictObject({ sha256 })]);

/** Longer sides of a picture in pixels: in lists, and opened. */
const pictureSize = z.enum(['thumbnail', 'screen']);

/** The calls for files that belong to something, and for photographs that are measured. */
export const attachmentCalls = {
  'attachments.list': call<AttachmentLine[]>()(z.strictObject(to)),
  'attachments.counts': call<AttachmentCounts>()(z.strictObject({})),
  'attachment.add': call<AttachmentLine[]>()(z.strictObject({ ...to, name: line.min(1), bytes: fileBytes, caption: line.default('') })),
  'attachment.unlink': call<AttachmentLine[]>()(z.strictObject({ ...to, sha256, reason: text.min(1) })),
  'attachment.picture': call<PictureView>()(z.strictObject({ sha256, size: pictureSize })),
  'attachment.get': call<{ name: string; mediaType: string; bytes: string }>()(z.strictObject({ sha256 })),
  'photo.preview': call<PhotoPreview>()(z.strictObject({ source: photoSource, channel: photoReadingSchema.shape.channel })),
  'photo.measure': call<BenchSheetView>()(
    z.strictObject({ testId: id, row: z.string().max(20), key: z.string().max(100), source: photoSource, reading: photoReadingSchema, reason: text.default('') }),
  ),
} as const;
