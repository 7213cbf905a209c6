import { sha256Hex } from '../store/journal.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import type { Draft } from './open-notebook.ts';

/** What to append so that a file is kept in the notebook; nothing to append when it holds the same content already. */
export function attachmentDraft(
  store: NotebookStore,
  name: string,
  mediaType: string,
  bytes: Uint8Array,
): { sha256: string; drafts: Draft[]; attachments: { sha256: string; bytes: Uint8Array }[] } {
  const sha256 = sha256Hex(bytes);
  const known = store.one('SELECT sha256 FROM attachment WHERE sha256 = ?', [sha256]);
  if (known) return { sha256, drafts: [], attachments: [] };
  return {
    sha256,
    drafts: [{ kind: 'attachment.added', body: { sha256, name, mediaType, size: bytes.length } }],
    attachments: [{ sha256, bytes }],
  };
}
