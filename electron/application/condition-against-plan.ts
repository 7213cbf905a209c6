import type { Field, Method } from '../../shared-lib/method/method.ts';
import type { PlanLine } from '../../shared-lib/plan/plan.ts';
import type { StoredCell } from './queries/tests.ts';

/**
 * The first choice of a test that is another than the line of a plan fixes: a dry rub is no wet one. Numbers and words may
 * differ a little from what was planned, and a condition that was left empty says nothing.
 */
export function conditionAgainstPlan({ conditions }: Pick<PlanLine, 'conditions'>, method: Pick<Method, 'conditions'>, ofTest: Record<string, StoredCell>): Field | null {
  const other = method.conditions.find(({ kind, key }) => {
    const value = ofTest[key]?.value;
    return kind === 'choice' && key in conditions && value != null && value !== conditions[key];
  });
  return other ?? null;
}
