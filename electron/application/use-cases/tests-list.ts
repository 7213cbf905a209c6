import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { TestLine } from '../../../shared-lib/notebook/views.ts';
import { knownTestIds, testIdsInState } from '../queries/tests.ts';
import { testLine } from '../test-line.ts';
import type { Workplace } from '../workplace.ts';

export function testsList({ notebook }: Workplace, { state, search, limit }: ParsedInput<'tests.list'>): TestLine[] {
  return testIdsInState(notebook.store, state, limit, search.split(/\s+/).filter(Boolean)).map((testId) => testLine(notebook, testId));
}

/** Those that a form holds, which may name one of another notebook. */
export function testsNamed({ notebook }: Workplace, { testIds }: ParsedInput<'tests.named'>): TestLine[] {
  return knownTestIds(notebook.store, testIds).map((testId) => testLine(notebook, testId));
}
