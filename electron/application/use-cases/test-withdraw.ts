import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { loadTest, type StoredTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';

/** Withdraws a test that was begun by mistake. One with readings is not: they count or are voided, with a reason each. */
export function withdrawTest({ notebook }: Workplace, { testId, reason }: ParsedInput<'test.withdraw'>): BenchSheetView {
  const test = loadTest(notebook.store, testId);
  requireWithdrawable(test);
  requireReason(reason, 'A withdrawn test counts nowhere');
  notebook.append([{ kind: 'test.withdrawn', body: { testId, reason: reason.trim() } }]);
  return benchSheet(notebook, testId);
}

/** @throws Refusal when the test has been finished or has readings that count */
export function requireWithdrawable(test: StoredTest): void {
  if (test.finished) throw new Refusal('conflict', 'A test that was finished is not withdrawn; correct what is wrong, then finish it again.');
  const read = test.rows.some((row) => !row.voided && Object.values(row.cells).some(({ value, typed }) => value !== null && typed !== ''));
  if (read) throw new Refusal('conflict', 'This test has readings; a test with readings is not withdrawn. Void the rows that do not count, with the reason.');
}
