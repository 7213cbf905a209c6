import type { Approval, SignedName } from '../notebook/approval-views.ts';

/** What a person signed, frozen: the file of a signed approval, from which its page is printed. */
export interface ApprovalContent {
  laboratory: string;
  /** As it stood when it was signed. */
  approval: Approval;
  signature: SignedName;
  /** Entries before the signature, and the hash of the last of them. */
  record: { entries: number; chainHash: string };
}
