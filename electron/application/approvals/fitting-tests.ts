import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import { isAsPlanned } from '../followed-plan.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import type { TestOfRun } from '../queries/approvals.ts';

/** Tests by the line's method under its conditions: those made for this very line first; one that was made for another line does not fit. */
export function fittingTests(notebook: OpenNotebook, tests: TestOfRun[], planId: string, line: PlanLine): TestOfRun[] {
  const alike = tests.filter((test) => test.methodId === line.methodId && (test.planId !== planId || test.lineId === line.lineId) && isAsPlanned(notebook, line, test.testId));
  return [...alike.filter((test) => test.planId === planId), ...alike.filter((test) => test.planId !== planId)];
}
