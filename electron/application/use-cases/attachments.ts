import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { AttachmentLine, PictureView } from '../../../shared-lib/notebook/attachment-views.ts';
import { mediaTypeOf } from '../../picture/media-type.ts';
import { attachmentDraft } from '../attachment-draft.ts';
import { decodeFile } from '../decode-file.ts';
import { findAttachment, isLinked, isThere, listAttachments } from '../queries/attachments.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';

/** Puts a file with a sample, lot, material or test. The same content is kept once, whatever it is put with. */
export function addAttachment({ notebook }: Workplace, input: ParsedInput<'attachment.add'>): AttachmentLine[] {
  const { attachedTo, attachedId, name, caption } = input;
  const { store } = notebook;
  if (!isThere(store, attachedTo, attachedId)) throw new Refusal('not-found', `This ${attachedTo} is not in the notebook.`);
  const bytes = decodeFile(input.bytes);
  if (bytes.length === 0) throw new InputError('bytes', 0, `${name} is empty; there is nothing to keep.`);
  const { sha256, drafts, attachments } = attachmentDraft(store, name, mediaTypeOf(name, bytes), bytes);
  if (isLinked(store, attachedTo, attachedId, sha256)) {
    throw new Refusal('conflict', `This ${attachedTo} has that file already, as ${findAttachment(store, sha256)?.name ?? name}; the content is the same.`);
  }
  // The notebook has it under another name: the one that it was looked for by is not lost.
  const known = findAttachment(store, sha256)?.name ?? name;
  const said = caption || (known === name ? '' : `added as ${name}`.slice(0, 200));
  notebook.append([...drafts, { kind: 'attachment.linked', body: { sha256, attachedTo, attachedId, caption: said } }], attachments);
  return listAttachments(store, attachedTo, attachedId);
}

/** The file stays in the record and wherever else it is; only here it is not listed any more. */
export function unlinkAttachment({ notebook }: Workplace, { attachedTo, attachedId, sha256, reason }: ParsedInput<'attachment.unlink'>): AttachmentLine[] {
  const { store } = notebook;
  if (!isLinked(store, attachedTo, attachedId, sha256)) throw new Refusal('not-found', `This ${attachedTo} does not have that file.`);
  notebook.append([{ kind: 'attachment.unlinked', body: { attachedTo, attachedId, sha256, reason: reason.trim() } }]);
  return listAttachments(store, attachedTo, attachedId);
}

export function attachedPicture({ notebook }: Workplace, { sha256, size }: ParsedInput<'attachment.picture'>): Promise<PictureView> {
  return notebook.pictures.view(sha256, size);
}

/** The file as it came. */
export function attachedFile({ notebook: { store } }: Workplace, { sha256 }: ParsedInput<'attachment.get'>): { name: string; mediaType: string; bytes: string } {
  const found = findAttachment(store, sha256);
  const bytes = store.attachment(sha256);
  if (!found || !bytes) throw new Refusal('not-found', 'This file is not in the notebook.');
  return { name: found.name, mediaType: found.mediaType, bytes: Buffer.from(bytes).toString('base64') };
}
