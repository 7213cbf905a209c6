import type { Method } from '../../shared-lib/method/method.ts';
import { replicatesText } from '../../shared-lib/plan/line-texts.ts';
import type { PlanLine } from '../../shared-lib/plan/plan.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { countCompleteRows } from './queries/complete-rows.ts';

/** Fewer than asked for, in rows of the bench sheet. */
export interface TooFew {
  complete: number;
  asked: number;
  /** '3 of 10 positions'. */
  text: string;
}

/**
 * The complete rows of a finished test against the replicates that a line of a plan asks for; `null` where it has enough.
 * A voided row counts for nothing.
 * @param method names the rows; `undefined` for one that is not known here
 */
export function tooFew(store: NotebookStore, testId: string, line: Pick<PlanLine, 'replicates'>, method: Pick<Method, 'readings'> | undefined): TooFew | null {
  const complete = countCompleteRows(store, testId);
  return complete < line.replicates ? { complete, asked: line.replicates, text: `${complete} of ${replicatesText(line, method)}` } : null;
}
