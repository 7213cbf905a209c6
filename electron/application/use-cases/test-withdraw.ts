import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';

/** Withdraws a test that was begun by mistake. One with readings is not: they count or are voided, with a reason each. */
export function withdrawTest({ notebook }: Workplace, { testId, reason }: ParsedInput<'test.withdraw'>): BenchSheetView {
  requireWithdrawable(notebook, testId);
  requireReason(reason, 'A withdrawn test counts nowhere');
  notebook.append([{ kind: 'test.withdrawn', body: { testId, reason: reason.trim() } }]);
  return benchSheet(notebook, testId);
}

/** @throws Refusal when there is no such test, it has been finished or has readings that count */
export function requireWithdrawable({ store, methods }: OpenNotebook, testId: string): void {
  const test = loadTest(store, testId);
  if (test.finished) throw new Refusal('conflict', 'A test that was finished is not withdrawn; correct what is wrong, then finish it again.');
  const fields = methods.findOfTest(test)?.readings.fields ?? [];
  // What a row begins with is nobody's reading; a trace, a photograph or a spectrum from a file is one, though nothing was typed.
  const filledIn = new Set(fields.filter((field) => 'carryDown' in field || 'default' in field).map(({ key }) => key));
  const read = test.rows.some((row) => !row.voided && Object.entries(row.cells).some(([key, { value, typed }]) => value !== null && (typed !== '' || !filledIn.has(key))));
  if (read) throw new Refusal('conflict', 'This test has readings; a test with readings is not withdrawn. Void the rows that do not count, with the reason.');
}
