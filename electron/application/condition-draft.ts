import type { CellValue, Field } from '../../shared-lib/method/method.ts';
import { cellChange } from './enter-cell.ts';
import { isFilledIn } from './is-filled-in.ts';
import type { Draft } from './open-notebook.ts';
import type { StoredTest } from './queries/tests.ts';

/**
 * The entry by which a condition takes a value; none where it has it already.
 * @param typed '' where the program fills it in
 * @throws InputError when that is a correction and has no reason
 */
export function conditionDraft(test: StoredTest, field: Field, value: CellValue, typed: string, reason: string): Draft[] {
  const before = test.conditions[field.key];
  const change = cellChange(field, before, value, reason, isFilledIn(test, field, before));
  const body = { testId: test.testId, key: field.key, value, typed };
  switch (change.change) {
    case 'none':
      return [];
    case 'entered':
      return [{ kind: 'condition.entered', body }];
    case 'corrected':
      return [{ kind: 'condition.corrected', body: { ...body, before: change.before, reason: change.reason } }];
  }
}
