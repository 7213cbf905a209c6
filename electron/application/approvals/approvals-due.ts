import type { StandingDue } from '../due/standing-due.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { approvalsInDoubt, draftedApprovals, type StoredApproval } from '../queries/approvals.ts';
import { lotsRetiredSinceSigning } from '../queries/lots-retired-since.ts';
import { approvalHeading } from './approval-view.ts';

/** Drafts that wait for a signature or for what blocks them, and signed approvals that stand on a result which was corrected later or on a lot which was retired later. */
export function approvalsDue(notebook: OpenNotebook): StandingDue[] {
  const due = (stored: StoredApproval): StandingDue => {
    const { approvalId, job, product, pressRun, standing, standingText, draftedAt } = approvalHeading(notebook, stored);
    const of = [`job ${job}`, product, pressRun].filter(Boolean).join(', ');
    const [what, why] =
      standing.startsWith('signed')
        ? [`Withdraw or replace the press approval: ${of}`, standingText]
        : [standing === 'blocked' ? `Press approval blocked: ${of}` : `Sign the press approval: ${of}`, `Drafted ${draftedAt.slice(0, 10)}. ${standingText}`];
    return { kind: 'approval', what, why, dueOn: null, sampleId: '', testId: '', approvalId };
  };
  return [...draftedApprovals(notebook.store), ...approvalsInDoubt(notebook.store, [...lotsRetiredSinceSigning(notebook.store).keys()])].map(due);
}
