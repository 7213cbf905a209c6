import type { Method } from '../../../shared-lib/method/method.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
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
  return line ? planLineTitle(line, methods.find(line.methodId)) : lineId;
}

/** 'Lamination bond, 7 days after lamination' */
export function planLineTitle({ methodId, moment }: PlanLine, method: Method | undefined): string {
  return `${method?.title ?? methodId}, ${momentText(moment)}`;
}
