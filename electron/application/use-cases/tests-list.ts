import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { TestLine } from '../../../shared-lib/notebook/views.ts';
import { testIdsInState } from '../queries/tests.ts';
import { testLine } from '../test-line.ts';
import type { Workplace } from '../workplace.ts';

export function testsList({ notebook }: Workplace, { state, limit }: ParsedInput<'tests.list'>): TestLine[] {
  return testIdsInState(notebook.store, state, limit).map((testId) => testLine(notebook, testId));
}
