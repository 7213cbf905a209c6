/** How an approval stands. `signed, corrected later`: a result that it stands on was corrected after it was signed; `signed, lot retired later`: a lot. */
export type ApprovalStanding = 'blocked' | 'ready to sign' | 'signed' | 'signed, corrected later' | 'signed, lot retired later' | 'withdrawn' | 'replaced';

/** What the standing follows from. */
export interface StandingFacts {
  signed: boolean;
  withdrawn: boolean;
  replaced: boolean;
  /** Results that were corrected after the signature. */
  correctedLater: number;
  /** Lots that were retired after the signature. */
  retiredLater: number;
  /** Of a draft: lines that block it. */
  blocking: number;
}

export function approvalStanding({ signed, withdrawn, replaced, correctedLater, retiredLater, blocking }: StandingFacts): ApprovalStanding {
  if (withdrawn) return 'withdrawn';
  if (!signed) return blocking > 0 ? 'blocked' : 'ready to sign';
  if (replaced) return 'replaced';
  if (correctedLater > 0) return 'signed, corrected later';
  return retiredLater > 0 ? 'signed, lot retired later' : 'signed';
}

/** The standing in words, as lists show it: 'signed, 2 lines waived'. @param waived lines of a signed one */
export function standingWords(standing: ApprovalStanding, waived: number): string {
  return standing.startsWith('signed') && waived > 0 ? `${standing}, ${waived} ${waived === 1 ? 'line' : 'lines'} waived` : standing;
}
