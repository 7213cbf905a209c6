import type { TodayView } from '../../../shared-lib/notebook/views.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { draftedApprovals } from '../queries/approvals.ts';
import { approvalHeading } from './approval-view.ts';

/** Drafts that wait for a signature, or for what blocks them. */
export function approvalsDue(notebook: OpenNotebook, today: string): TodayView['due'] {
  return draftedApprovals(notebook.store).map((stored) => {
    const { approvalId, job, product, standing, standingText, draftedAt } = approvalHeading(notebook, stored);
    const of = `job ${job}${product ? `, ${product}` : ''}`;
    return {
      what: standing === 'blocked' ? `Press approval blocked: ${of}` : `Sign the press approval: ${of}`,
      why: `Drafted ${draftedAt.slice(0, 10)}. ${standingText}`,
      dueOn: today,
      overdue: false,
      sampleId: '',
      testId: '',
      approvalId,
    };
  });
}
