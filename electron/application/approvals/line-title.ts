import { lineName } from '../../../shared-lib/plan/line-texts.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { MethodBook } from '../method-book.ts';
import { findApproval } from '../queries/approvals.ts';
import { findPlanVersion } from '../queries/plans.ts';

/** What a line asks for, in words; the id where the notebook does not know the line. */
export function approvalLineTitle(store: NotebookStore, methods: MethodBook, approvalId: string, lineId: string): string {
  const added = store.one<{ title: string }>("SELECT title FROM approval_line WHERE approvalId = ? AND lineId = ? AND title <> ''", [approvalId, lineId]);
  if (added) return added.title;
  const approval = findApproval(store, approvalId);
  const line = approval && findPlanVersion(store, approval.planId, approval.version)?.content.lines.find((candidate) => candidate.lineId === lineId);
  return line ? lineName({ title: methods.find(line.methodId)?.title ?? line.methodId, momentText: momentText(line.moment), preparation: line.preparation }) : lineId;
}
