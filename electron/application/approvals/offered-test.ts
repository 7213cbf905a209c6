import type { ApprovalLine } from '../../../shared-lib/notebook/approval-views.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import type { TestOfRun } from '../queries/approvals.ts';
import { lineResult } from './line-result.ts';

/** A test as it is offered for a line, with the verdict that the line would show. @param limits of the plan */
export function offeredTest(notebook: OpenNotebook, { testId, sampleCode, roll, finishedAt, ...test }: TestOfRun, limits: PlanLine['limits']): ApprovalLine['offers'][number] {
  const method = notebook.methods.findOfTest(test)?.shortTitle ?? test.methodId;
  return { testId, sampleCode, roll, method, finishedAt, verdict: lineResult(notebook, testId, limits).verdict };
}
