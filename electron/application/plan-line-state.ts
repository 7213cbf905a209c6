import type { VerdictWord } from '../../shared-lib/method/property-verdict.ts';
import type { PlanLineState } from '../../shared-lib/notebook/plan-views.ts';
import type { TestState } from '../../shared-lib/notebook/test-state.ts';
import { dayOf } from './day-of.ts';

/**
 * How far a test of a plan has come. It is due from the day on which it falls, and overdue once that day is over.
 * @param test that the line was last given, if any, judged by the limits of the plan; `enough`: it has the rows that the plan asks for
 * @param dueAt ISO 8601; `null` while the time that the moment counts from is not stated
 */
export function planLineState(test: { state: TestState; verdict: VerdictWord; enough: boolean } | null, dueAt: string | null, now: Date): PlanLineState {
  if (test?.state === 'running') return 'running';
  if (test?.state === 'outdated') return 'outdated';
  // More rows cannot take back that one fell short.
  if (test && !test.enough && test.verdict !== 'falls short') return 'too few';
  if (test) return test.verdict === 'no limit' ? 'tested' : test.verdict;
  if (dueAt === null) return 'not started';
  const [day, today] = [dayOf(dueAt), dayOf(now)];
  if (day === today) return 'due';
  return day < today ? 'overdue' : 'to come';
}
