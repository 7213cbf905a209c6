import { isDeepStrictEqual } from 'node:util';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { checkLimits } from '../check-limits.ts';
import { loadTest } from '../queries/tests.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';

/**
 * Sets the limits of a test and how the interval counts against them. Moving a limit that stood already needs a reason:
 * the reader of the record must see why it was moved once readings were there.
 */
export function setLimits(workplace: Workplace, input: ParsedInput<'test.setLimits'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, input.testId);
  const limits = input.limits.filter((limit) => limit.lower !== null || limit.upper !== null);
  checkLimits(notebook.methods.ofTest(test), input.limits, 'limits');
  if (!isDeepStrictEqual(limits, test.limits) || input.rule !== test.rule) {
    const kept = test.limits.every((before) => limits.some((limit) => isDeepStrictEqual(limit, before)));
    const moved = !kept || (test.limits.length > 0 && input.rule !== test.rule);
    if (moved || test.finished) requireReason(input.reason, test.finished ? 'The test was finished before' : 'The limits were set before');
    notebook.append([{ kind: 'limits.set', body: { testId: input.testId, limits, rule: input.rule, reason: input.reason.trim() } }]);
  }
  return benchSheet(notebook, input.testId);
}
