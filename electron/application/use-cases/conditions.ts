import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { conditionDraft } from '../condition-draft.ts';
import { fieldNamed } from '../field-named.ts';
import { followReference } from '../follow-reference.ts';
import { itemFinder } from '../item-finder.ts';
import { loadTest } from '../queries/tests.ts';
import { readCell } from '../read-cell.ts';
import type { Workplace } from '../workplace.ts';

/** Enters, corrects or clears one condition of a test, with what follows from a reference colour that it names. */
export function enterCondition(workplace: Workplace, { testId, key, typed, reason }: ParsedInput<'condition.enter'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const field = fieldNamed(method.conditions, key);
  const value = readCell(field, typed, 'typed', itemFinder(notebook.store));
  const drafts = conditionDraft(test, field, value, typed, reason);
  if (field.kind === 'item') drafts.push(...followReference(notebook.store, test, method, field, typed, reason));
  if (drafts.length > 0) notebook.append(drafts);
  return benchSheet(notebook, testId);
}
