import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { cellChange } from '../enter-cell.ts';
import { fieldNamed } from '../method-of-test.ts';
import { loadTest } from '../queries/tests.ts';
import { readCell } from '../read-cell.ts';
import type { Workplace } from '../workplace.ts';

/** Enters, corrects or clears one condition of a test. */
export function enterCondition(workplace: Workplace, { testId, key, typed, reason }: ParsedInput<'condition.enter'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  const field = fieldNamed(notebook.methods.ofTest(test).conditions, key);
  const value = readCell(field, typed, 'typed');
  const before = test.conditions[key];
  const filledIn = !test.finished && before?.seq === test.startedSeq;
  const change = cellChange(field, before, value, reason, filledIn);
  if (change.change === 'entered') notebook.append([{ kind: 'condition.entered', body: { testId, key, value, typed } }]);
  if (change.change === 'corrected') {
    notebook.append([{ kind: 'condition.corrected', body: { testId, key, value, typed, before: change.before, reason: change.reason } }]);
  }
  return benchSheet(notebook, testId);
}
