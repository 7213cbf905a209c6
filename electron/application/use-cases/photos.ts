import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { PhotoPreview } from '../../../shared-lib/notebook/attachment-views.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { boundsOf, pixelsInside } from '../../../shared-lib/picture/region.ts';
import { cropTo } from '../../../shared-lib/picture/region-levels.ts';
import { channelPlane } from '../../picture/channel-plane.ts';
import type { DecodedPicture } from '../../picture/decode-picture.ts';
import { writeGreyPng } from '../../picture/grey-png.ts';
import { mediaTypeOf } from '../../picture/media-type.ts';
import { pictureJpeg } from '../../picture/picture-jpeg.ts';
import { sha256Hex } from '../../store/journal.ts';
import { attachmentDraft } from '../attachment-draft.ts';
import { benchSheet } from '../bench-sheet.ts';
import { decodeFile } from '../decode-file.ts';
import { fieldNamed } from '../field-named.ts';
import type { Draft, OpenNotebook } from '../open-notebook.ts';
import { findAttachment } from '../queries/attachments.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';
import { fillInIfNew, openRow } from './readings.ts';

type Source = ParsedInput<'photo.preview'>['source'];

/** A photograph as it will be measured, before anything is recorded. */
export async function previewPhoto({ notebook }: Workplace, { source, channel }: ParsedInput<'photo.preview'>): Promise<PhotoPreview> {
  const { name, picture } = await open(notebook, source);
  const { width, height, original, notes } = picture;
  return { name, width, height, original, notes, picture: (await pictureJpeg(picture)).jpeg, grey: Buffer.from(channelPlane(picture, channel).grey).toString('base64') };
}

/** Measures a photograph into a cell; the photograph and the grey that was measured are kept in the notebook. */
export async function measurePhoto(workplace: Workplace, input: ParsedInput<'photo.measure'>): Promise<BenchSheetView> {
  const { testId, row, key, source, reading } = input;
  const { notebook } = workplace;
  const { name, bytes, sha256, picture } = await open(notebook, source);
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const field = fieldNamed(method.readings.fields, key);
  if (field.kind !== 'photo') throw new Refusal('conflict', `${field.label} takes no photograph.`);
  const before = openRow(test, method, row)?.cells[key];
  // Only a replacement has a reason: by it the record tells a correction from a first photograph.
  if (before) requireReason(input.reason, `${field.label} was measured before`);
  const reason = before ? input.reason.trim() : '';
  pixelsInside(reading.region, picture);
  const grey = writeGreyPng(cropTo(channelPlane(picture, reading.channel), boundsOf(reading.region)));
  const photo = attachmentDraft(notebook.store, name, mediaTypeOf(name, bytes), bytes);
  const plane = attachmentDraft(notebook.store, `${name} as measured.png`.slice(-200), 'image/png', grey);
  const { problem } = notebook.photos.area(plane.sha256, reading, name, grey);
  if (problem) throw new InputError('reading', null, problem);
  const measured: Draft = { kind: 'photo.measured', body: { photoId: workplace.newId(), testId, row, key, sha256, planeSha256: plane.sha256, reading, reason } };
  notebook.append([...photo.drafts, ...plane.drafts, measured, ...fillInIfNew(test, method, row, new Set([key]))], [...photo.attachments, ...plane.attachments]);
  return benchSheet(notebook, testId);
}

/** @throws InputError as `decodePicture`; Refusal when the notebook has no such file */
async function open(notebook: OpenNotebook, source: Source): Promise<{ name: string; bytes: Uint8Array; sha256: string; picture: DecodedPicture }> {
  const { name, bytes } = 'bytes' in source ? { name: source.name, bytes: decodeFile(source.bytes) } : kept(notebook, source.sha256);
  const sha256 = sha256Hex(bytes);
  return { name, bytes, sha256, picture: await notebook.pictures.measured(sha256, bytes) };
}

function kept({ store }: OpenNotebook, sha256: string): { name: string; bytes: Uint8Array } {
  const found = findAttachment(store, sha256);
  const bytes = store.attachment(sha256);
  if (!found || !bytes) throw new Refusal('not-found', 'This photograph is not in the notebook.');
  return { name: found.name, bytes };
}
