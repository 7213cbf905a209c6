/** How an approval stands. `signed, corrected later`: a result that it stands on was corrected after it was signed. */
export type ApprovalStanding = 'blocked' | 'ready to sign' | 'signed' | 'signed, corrected later' | 'withdrawn' | 'replaced';

/** What the standing follows from. */
export interface StandingFacts {
  signed: boolean;
  withdrawn: boolean;
  replaced: boolean;
  /** Results that were corrected after the signature. */
  correctedLater: number;
  /** Of a draft: lines that block it. */
  blocking: number;
}

export function approvalStanding({ signed, withdrawn, replaced, correctedLater, blocking }: StandingFacts): ApprovalStanding {
  if (withdrawn) return 'withdrawn';
  if (!signed) return blocking > 0 ? 'blocked' : 'ready to sign';
  if (replaced) return 'replaced';
  return correctedLater > 0 ? 'signed, corrected later' : 'signed';
}
