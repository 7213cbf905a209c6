import { lineState, type LineFilling } from '../../../shared-lib/approval/line-state.ts';
import type { PropertyVerdict } from '../../../shared-lib/method/property-verdict.ts';
import type { ApprovalLine } from '../../../shared-lib/notebook/approval-views.ts';
import { lineLimitTexts, replicatesText } from '../../../shared-lib/plan/line-texts.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';
import { isAsPlanned } from '../followed-plan.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { finishedTestsOfJob, finishingEntry, linesOfApproval, type StoredApproval, type StoredApprovalLine, type TestOfJob } from '../queries/approvals.ts';
import { findPerson } from '../queries/people.ts';
import { findPlanVersion } from '../queries/plans.ts';
import { loadTest } from '../queries/tests.ts';
import { lineResult } from './line-result.ts';

const MOST_OFFERED = 20;

/** A line as it stands, without what may still fill it. */
export type StandingLine = Omit<ApprovalLine, 'offers'>;

/** The checklist as it stands now: the lines of the plan's version, then those that were added. */
export function standingLines(notebook: OpenNotebook, approval: StoredApproval): StandingLine[] {
  const stored = linesOfApproval(notebook.store, approval.approvalId);
  return [
    ...plannedLines(notebook, approval).map((line) => {
      const method = notebook.methods.find(line.methodId);
      return {
        lineId: line.lineId,
        added: false,
        title: method?.title ?? line.methodId,
        momentText: momentText(line.moment),
        preparation: line.preparation,
        replicatesText: replicatesText(line, method),
        limitTexts: lineLimitTexts(line, method),
        ...filling(notebook, stored.find(({ lineId }) => lineId === line.lineId), line.limits),
      };
    }),
    ...stored
      .filter(({ addedSeq }) => addedSeq > 0)
      .map((line) => ({ lineId: line.lineId, added: true, title: line.title, momentText: '', preparation: '', replicatesText: '', limitTexts: [], ...filling(notebook, line, []) })),
  ];
}

/** The same with the finished tests of the job that each line may take. */
export function approvalLines(notebook: OpenNotebook, approval: StoredApproval): ApprovalLine[] {
  const lines = standingLines(notebook, approval);
  const planned = plannedLines(notebook, approval);
  const tests = finishedTestsOfJob(notebook.store, approval.job);
  const lineOf = new Map(lines.flatMap(({ lineId, result }) => (result ? [[result.testId, lineId]] : [])));
  return lines.map((line) => {
    // A test fills one line; that which was corrected since is taken again, before any other.
    const again = line.remark === '' ? undefined : line.result?.testId;
    const free = tests.filter(({ testId }) => !lineOf.has(testId) || testId === again);
    const asked = planned.find(({ lineId }) => lineId === line.lineId);
    const fitting = asked ? likeliest(notebook, free, approval.planId, asked) : free;
    const inOrder = fitting.toSorted((one, other) => Number(other.testId === again) - Number(one.testId === again));
    return { ...line, offers: inOrder.slice(0, MOST_OFFERED).map((test) => offered(notebook, test)) };
  });
}

function plannedLines({ store }: OpenNotebook, { planId, version }: StoredApproval): PlanLine[] {
  return findPlanVersion(store, planId, version)?.content.lines ?? [];
}

/** Tests by the line's method under its conditions: those made for this very line first; one that was made for another line is not offered. */
function likeliest(notebook: OpenNotebook, tests: TestOfJob[], planId: string, line: PlanLine): TestOfJob[] {
  const alike = tests.filter((test) => test.methodId === line.methodId && (test.planId !== planId || test.lineId === line.lineId) && isAsPlanned(notebook, line, test.testId));
  return [...alike.filter((test) => test.planId === planId), ...alike.filter((test) => test.planId !== planId)];
}

function offered({ methods }: OpenNotebook, { testId, sampleCode, finishedAt, verdicts, ...test }: TestOfJob): ApprovalLine['offers'][number] {
  return {
    testId,
    sampleCode,
    method: methods.findOfTest(test)?.shortTitle ?? test.methodId,
    finishedAt,
    verdict: worstVerdict((JSON.parse(verdicts) as PropertyVerdict[]).map(({ verdict }) => verdict)),
  };
}

type Filled = Pick<ApprovalLine, 'state' | 'remark' | 'result' | 'observation' | 'waiver'>;

function filling(notebook: OpenNotebook, line: StoredApprovalLine | undefined, limits: PlanLine['limits']): Filled {
  if (!line) return { state: 'open', remark: '', result: null, observation: null, waiver: null };
  const { testId, finishedId, inOrder, remark, observedBy, observedAt, waivedOf, waiverReason, waivedBy, waivedAt } = line;
  const linked = testId === null ? null : lineResult(notebook, testId, limits);
  const finished = testId !== null && loadTest(notebook.store, testId).state === 'finished';
  const current = finished && finishingEntry(notebook.store, testId) === finishedId;
  const by: LineFilling = linked ? { by: 'result', verdict: linked.verdict, current } : inOrder === null ? { by: 'nothing' } : { by: 'observation', inOrder: inOrder === 1 };
  const state = lineState(by, waivedOf);
  return {
    state,
    remark: !linked || current ? '' : finished ? 'The test was finished anew since: look at its result and take it again.' : 'Something was corrected since: finish the test again, then take its result.',
    result: linked?.result ?? null,
    observation: inOrder === null ? null : { inOrder: inOrder === 1, remark, ...signer(notebook, observedBy, observedAt) },
    waiver: waivedOf === null ? null : { reason: waiverReason, holds: state === 'waived', ...signer(notebook, waivedBy, waivedAt) },
  };
}

function signer({ store }: OpenNotebook, personId: string | null, at: string | null): { name: string; role: string; at: string } {
  const person = findPerson(store, personId ?? '');
  return { name: person?.name ?? personId ?? '', role: person?.role ?? '', at: at ?? '' };
}
