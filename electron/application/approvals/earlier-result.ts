import type { EarlierResult } from '../../../shared-lib/notebook/approval-views.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { stateOfTest } from '../queries/tests.ts';
import { lineResult } from './line-result.ts';

/** A result that filled a line before another did, as it stands now. @param limits of the plan */
export function earlierResult(notebook: OpenNotebook, testId: string, limits: PlanLine['limits']): EarlierResult {
  const { result, verdict } = lineResult(notebook, testId, limits);
  const finished = stateOfTest(notebook.store, testId) === 'finished';
  return {
    testId,
    sampleCode: result.sampleCode,
    roll: result.roll ?? '',
    finishedAt: finished ? result.finishedAt : '',
    text: result.properties.map(({ title, text }) => `${title} ${text}`).join('; '),
    verdict,
  };
}
