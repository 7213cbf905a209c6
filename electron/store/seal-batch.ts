import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';
import { sealEntry } from '../../shared-lib/notebook/hash-chain.ts';
import { parseDraft } from '../../shared-lib/notebook/parse-draft.ts';
import type { Clock } from './clock.ts';
import { sha256Hex, type AttachmentContent, type Batch } from './journal.ts';
import type { RecordEnd } from './record.ts';

/**
 * Checks drafts and gives them their places behind `end`.
 * @param attachments Content of the attachments that the drafts announce by 'attachment.added'.
 * @throws InputError when a draft is not as its schema asks or an attachment is not the one announced.
 */
export function sealBatch(drafts: DraftEntry[], attachments: AttachmentContent[], end: RecordEnd, clock: Clock): Batch {
  let { count, hash } = end;
  const entries = drafts.map((draft) => {
    const entry = sealEntry(parseDraft(draft), {
      seq: ++count,
      id: clock.ulid(),
      recordedAt: clock.now().toISOString(),
      previous: hash,
    });
    hash = entry.hash;
    return entry;
  });
  for (const attachment of attachments) checkAttachment(attachment, drafts);
  return { entries, attachments };
}

function checkAttachment({ sha256, bytes }: AttachmentContent, drafts: DraftEntry[]): void {
  const announced = drafts.some((draft) => draft.kind === 'attachment.added' && draft.body.sha256 === sha256 && draft.body.size === bytes.length);
  if (!announced) throw new InputError('attachments', sha256, 'An attachment needs an entry in the same batch that says its name and size.');
  if (sha256Hex(bytes) !== sha256) throw new InputError('attachments', sha256, 'The content of the attachment is not the one that its entry names.');
}
