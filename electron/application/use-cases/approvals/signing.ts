import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { approvalMeaning } from '../../../../shared-lib/approval/approval-meaning.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { Approval } from '../../../../shared-lib/notebook/approval-views.ts';
import { approvalView, asSigned, requireApproval } from '../../approvals/approval-view.ts';
import { attachmentDraft } from '../../attachment-draft.ts';
import { fileStem } from '../../file-stem.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import type { StoredApproval } from '../../queries/approvals.ts';
import { notebookHeading } from '../../queries/notebook-heading.ts';
import { findPerson } from '../../queries/people.ts';
import { Refusal } from '../../refusal.ts';
import { sign } from '../../signing/sign.ts';
import type { Workplace } from '../../workplace.ts';
import { requireDraft } from './drafting.ts';

/** Signs: freezes what was read, as data and as a page, and takes the place of the approval that it replaces. */
export async function signApproval(workplace: Workplace, { approvalId, digest, ...signing }: ParsedInput<'approval.sign'>): Promise<Approval> {
  const { notebook } = workplace;
  const { store } = notebook;
  if (store.readOnly) throw new Refusal('read-only', store.readOnly);
  const meaning = approvalMeaning(requireReady(notebook, approvalId, digest));
  const signature = await sign(notebook, signing, meaning);
  // Hashing took its time, and something may have been entered in between.
  const approval = requireReady(notebook, approvalId, digest);
  const { name, role } = findPerson(store, signature.personId)!;
  const content = {
    laboratory: notebookHeading(store).laboratory,
    approval: { ...approval, checklist: approval.checklist.map(asSigned) },
    signature: { name, role, at: signature.at, meaning },
    record: { entries: store.entryCount, chainHash: store.chainHash },
  };
  const pdf = await workplace.surroundings.renderApproval(content);
  if (workplace.open !== notebook || store.chainHash !== content.record.chainHash) {
    throw new Refusal('conflict', 'The notebook was changed while the page was being made; look at the approval and sign it again.');
  }
  const frozen = attachmentDraft(store, `${fileNameOf(approval)}.json`, 'application/json', Buffer.from(JSON.stringify(content), 'utf8'));
  const printed = attachmentDraft(store, `${fileNameOf(approval)}.pdf`, 'application/pdf', pdf);
  notebook.append(
    [
      ...frozen.drafts,
      ...printed.drafts,
      {
        kind: 'approval.signed',
        body: { approvalId, contentSha256: frozen.sha256, pdfSha256: printed.sha256, replaces: approval.replaces?.approvalId ?? null, signature },
      },
    ],
    [...frozen.attachments, ...printed.attachments],
  );
  return approvalView(notebook, approvalId);
}

/** Takes a draft out of use, or says of a signed approval that it holds no more. It stays in the notebook. */
export async function withdrawApproval({ notebook }: Workplace, { approvalId, reason, ...signing }: ParsedInput<'approval.withdraw'>): Promise<Approval> {
  requireStanding(notebook, approvalId);
  if (reason.trim() === '') throw new InputError('reason', '', 'Say why it is withdrawn.');
  const { job } = requireApproval(notebook, approvalId);
  const signature = await sign(notebook, signing, `withdraws the press approval of job ${job}`);
  requireStanding(notebook, approvalId);
  notebook.append([{ kind: 'approval.withdrawn', body: { approvalId, reason: reason.trim(), signature } }]);
  return approvalView(notebook, approvalId);
}

export function approvalPdf({ notebook }: Workplace, { approvalId }: ParsedInput<'approval.pdf'>): { fileName: string; bytes: string } {
  const approval = requireApproval(notebook, approvalId);
  const { pdfSha256 } = approval;
  if (pdfSha256 === null) throw new Refusal('conflict', 'The page is made when the approval is signed.');
  const bytes = notebook.store.attachment(pdfSha256);
  if (!bytes) throw new Refusal('not-found', 'The page of this press approval is missing from the notebook.');
  return { fileName: `${fileNameOf(approval)}.pdf`, bytes: Buffer.from(bytes).toString('base64') };
}

function requireReady(notebook: OpenNotebook, approvalId: string, digest: string): Approval {
  const approval = requireDraft(notebook, approvalId);
  if (approval.blocking !== '') throw new Refusal('conflict', `It cannot be signed yet: ${approval.blocking}. Fill these lines, or have a named person waive them.`);
  if (approval.digest !== digest) throw new Refusal('conflict', 'Something was changed since the approval was shown: look at it again, then sign.');
  return approval;
}

function requireStanding(notebook: OpenNotebook, approvalId: string): void {
  const { withdrawnSeq, replacedSeq } = requireApproval(notebook, approvalId);
  if (withdrawnSeq !== null) throw new Refusal('conflict', 'It was withdrawn already.');
  if (replacedSeq !== null) throw new Refusal('conflict', 'A later approval has taken its place; withdraw that one.');
}

function fileNameOf({ job, pressRun }: Pick<StoredApproval, 'job' | 'pressRun'>): string {
  return `press-approval-${fileStem(`${job} ${pressRun}`.toLowerCase()) || 'job'}`;
}
