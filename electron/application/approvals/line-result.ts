import type { Limit } from '../../../shared-lib/method/method.ts';
import type { PropertyVerdict, VerdictWord } from '../../../shared-lib/method/property-verdict.ts';
import type { ApprovalResult } from '../../../shared-lib/notebook/approval-views.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import { headlineLines, judgeProperties, propertyLines } from '../../../shared-lib/report/property-line.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';
import { doubtFlags } from '../doubt-flags.ts';
import { limitDoubts } from './limit-doubts.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { nameOf } from '../queries/people.ts';
import { findSample } from '../queries/samples.ts';
import { studiesInUse } from '../queries/studies.ts';
import { loadTest } from '../queries/tests.ts';

/**
 * The result of a finished test as a line shows it, with its verdict. Each limit of the plan is compared with, whatever limits
 * the test itself was given; the test's own limits count as well where they are others. Where both set the same one, it is the
 * plan's, with who sets it there; what differs is said among the doubts.
 * @param limits of the plan; none for a line that a person added
 */
export function lineResult(notebook: OpenNotebook, testId: string, limits: PlanLine['limits']): { result: ApprovalResult; verdict: VerdictWord } {
  const { store, methods } = notebook;
  const test = loadTest(store, testId);
  const method = methods.findOfTest(test);
  const { finished } = test;
  const sample = findSample(store, test.sampleId);
  const shown = { testId, method: method?.title ?? test.methodId, sampleCode: sample?.code ?? '', roll: sample?.roll ?? '' };
  if (!method || !finished) return { result: { ...shown, finishedAt: finished?.at ?? '', finishedBy: '', verdict: 'undecided', properties: [], doubts: [] }, verdict: 'undecided' };
  const asked = judgeProperties(method, finished.results, limits, test.rule, studiesInUse(store, methods, test, test.finishedSeq)).filter(({ limit }) => limit !== null);
  const own = finished.verdicts.filter(({ limit }) => limit !== null);
  // The verdict that was stored is the one that was seen: it stands where it is about the same limit.
  const againstPlan = asked.map((verdict) => {
    const seen = own.find((other) => isSameLimit(other, verdict));
    return seen ? { ...seen, limit: verdict.limit } : verdict;
  });
  const others = own.filter((verdict) => !asked.some((planned) => isSameLimit(planned, verdict)));
  const compared = [...againstPlan, ...others];
  const lines = propertyLines(method, finished.results, compared.length > 0 ? compared : finished.verdicts, []);
  const verdict = worstVerdict(compared.map((one) => one.verdict));
  return {
    result: {
      ...shown,
      finishedAt: finished.at,
      finishedBy: nameOf(store, finished.by),
      verdict,
      properties: compared.length > 0 ? lines : headlineLines(method, lines),
      doubts: [...doubtFlags(store, test, method).map(({ text }) => text), ...limitDoubts(method, limits, own)],
    },
    verdict,
  };
}

function isSameLimit(one: PropertyVerdict, other: PropertyVerdict): boolean {
  const ends = (limit: Limit | null) => [limit?.lower, limit?.upper].join(' ');
  return one.property === other.property && ends(one.limit) === ends(other.limit);
}
