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

/** The checklist as it stands now: the lines of the plan's version, then those that were added. */
export function approvalLines(notebook: OpenNotebook, approval: StoredApproval): ApprovalLine[] {
  const stored = linesOfApproval(notebook.store, approval.approvalId);
  const planned = findPlanVersion(notebook.store, approval.planId, approval.version)?.content.lines ?? [];
  const used = new Set(stored.flatMap(({ testId }) => testId ?? []));
  const tests = finishedTestsOfJob(notebook.store, approval.job).filter(({ testId }) => !used.has(testId));
  const offer = (found: TestOfJob[]) => found.slice(0, MOST_OFFERED).map((test) => offered(notebook, test));
  return [
    ...planned.map((line) => {
      const method = notebook.methods.find(line.methodId);
      const filled = filling(notebook, stored.find(({ lineId }) => lineId === line.lineId), line.limits);
      return {
        lineId: line.lineId,
        added: false,
        title: method?.title ?? line.methodId,
        momentText: momentText(line.moment),
        preparation: line.preparation,
        replicatesText: replicatesText(line, method),
        limitTexts: lineLimitTexts(line, method),
        ...filled,
        offers: offer(likeliest(notebook, tests, approval.planId, line)),
      };
    }),
    ...stored
      .filter(({ addedSeq }) => addedSeq > 0)
      .map((line) => ({
        lineId: line.lineId,
        added: true,
        title: line.title,
        momentText: '',
        preparation: '',
        replicatesText: '',
        limitTexts: [],
        ...filling(notebook, line, []),
        offers: offer(tests),
      })),
  ];
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
