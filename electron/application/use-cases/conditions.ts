import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { cellChange } from '../enter-cell.ts';
import { followReference } from '../follow-reference.ts';
import { itemFinder } from '../item-finder.ts';
import { fieldNamed } from '../field-named.ts';
import type { Draft } from '../open-notebook.ts';
import { loadTest } from '../queries/tests.ts';
import { readCell } from '../read-cell.ts';
import type { Workplace } from '../workplace.ts';

/** Enters, corrects or clears one condition of a test. */
export function enterCondition(workplace: Workplace, { testId, key, typed, reason }: ParsedInput<'condition.enter'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const field = fieldNamed(method.conditions, key);
  const value = readCell(field, typed, 'typed', itemFinder(notebook.store));
  const before = test.conditions[key];
  const filledIn = !test.finished && (before?.seq === test.startedSeq || (before?.typed === '' && field.kind !== 'spectrum'));
  const change = cellChange(field, before, value, reason, filledIn);
  const drafts: Draft[] = [];
  if (change.change === 'entered') drafts.push({ kind: 'condition.entered', body: { testId, key, value, typed } });
  if (change.change === 'corrected') {
    drafts.push({ kind: 'condition.corrected', body: { testId, key, value, typed, before: change.before, reason: change.reason } });
  }
  if (field.kind === 'item') drafts.push(...followReference(notebook.store, test, method, field, typed, reason));
  if (drafts.length > 0) notebook.append(drafts);
  return benchSheet(notebook, testId);
}
