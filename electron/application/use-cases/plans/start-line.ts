import type { ParsedInput } from '../../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../../shared-lib/notebook/views.ts';
import { lineOfSample } from '../../followed-plan.ts';
import type { Workplace } from '../../workplace.ts';
import { beginTest } from '../test-start.ts';

/** Starts the test that a line of the sample's plan asks for: with its conditions, its limits and a row for each replicate. */
export function startPlanLine(workplace: Workplace, { sampleId, lineId }: ParsedInput<'samplePlan.startLine'>): BenchSheetView {
  const { planId, line } = lineOfSample(workplace.notebook, sampleId, lineId);
  const { methodId, conditions, limits, replicates } = line;
  return beginTest(workplace, sampleId, methodId, {
    conditions,
    // What a plan asks for is decided on by the whole interval, as is any test unless somebody says otherwise.
    limits: { limits, rule: 'guarded' },
    also: (testId) => [{ kind: 'planLine.tested', body: { sampleId, planId, lineId, testId, replicates } }],
  });
}
