import type { NotebookStore } from '../../store/notebook-store.ts';

/** Complete rows of a finished test, as SQL. @param testId SQL for its id. A test is not finished with a row that lacks something, so what was begun is complete. */
export const completeRowsOf = (testId: string): string =>
  `(SELECT count(*) FROM bench_row WHERE bench_row.testId = ${testId} AND voided = 0
    AND EXISTS (SELECT 1 FROM reading WHERE reading.testId = bench_row.testId AND reading."row" = bench_row."row" AND value IS NOT NULL))`;

export function countCompleteRows(store: NotebookStore, testId: string): number {
  return store.one<{ complete: number }>(`SELECT ${completeRowsOf('?1')} AS complete`, [testId])!.complete;
}
