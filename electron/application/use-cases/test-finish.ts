import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { evaluationOf } from '../evaluation-of-test.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';

/** Stores the result and the verdicts that follow from the readings as they stand. Later changes make the test outdated. */
export function finishTest(workplace: Workplace, { testId, remark }: ParsedInput<'test.finish'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  if (test.state === 'finished' && test.remark === remark.trim()) throw new Refusal('conflict', 'This test is finished already.');
  const { live, missing } = evaluationOf(notebook, test, notebook.methods.ofTest(test));
  if (!live || missing) {
    throw new InputError(missing?.where ?? '', null, `The test cannot be finished yet: ${missing?.text ?? 'there is no result.'}`);
  }
  const { calculation, version, results } = live.result;
  notebook.append([
    {
      kind: 'test.finished',
      body: {
        testId,
        calculation,
        calculationVersion: version,
        results,
        verdicts: live.lines.map((line) => line.verdict),
        remark: remark.trim(),
      },
    },
  ]);
  return benchSheet(notebook, testId);
}
