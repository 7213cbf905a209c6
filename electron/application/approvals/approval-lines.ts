import { lineState, type LineFilling } from '../../../shared-lib/approval/line-state.ts';
import type { Method } from '../../../shared-lib/method/method.ts';
import type { ApprovalLine } from '../../../shared-lib/notebook/approval-views.ts';
import { lineLimitTexts, replicatesText } from '../../../shared-lib/plan/line-texts.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import type { PlanLine } from '../../../shared-lib/plan/plan.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { finishedTestsOf, finishingEntry, linesOfApproval, samplesOfApproval, testsEverLinked, type StoredApproval, type StoredApprovalLine, type TestOfRun } from '../queries/approvals.ts';
import { findPerson } from '../queries/people.ts';
import { findPlanVersion } from '../queries/plans.ts';
import { findSample } from '../queries/samples.ts';
import { loadTest } from '../queries/tests.ts';
import { tooFew } from '../too-few.ts';
import { ageDoubts, worseDoubts } from './beside-the-line.ts';
import { earlierResult } from './earlier-result.ts';
import { fittingTests } from './fitting-tests.ts';
import { lineResult } from './line-result.ts';
import { offeredTest } from './offered-test.ts';
import { onlyMeasured } from './only-measured.ts';

const MOST_OFFERED = 20;

/** A line as it stands, without what may still fill it and what else is known. */
export type StandingLine = Omit<ApprovalLine, 'offers' | 'earlier' | 'onlyMeasured'>;

/** A line of the checklist with what is asked and what is stored of it. */
interface Asked {
  lineId: string;
  /** Of the plan; `null` for one that a person added. */
  planned: PlanLine | null;
  method: Method | undefined;
  title: string;
  stored: StoredApprovalLine | undefined;
}

/** What the lines of one approval share. */
interface Run {
  samples: { sampleId: string; code: string }[];
  /** Finished tests of the samples. */
  tests: TestOfRun[];
  /** The line that each linked test fills. */
  lineOf: ReadonlyMap<string, string>;
}

/** The checklist as it stands now: the lines of the plan's version, then those that were added. */
export function standingLines(notebook: OpenNotebook, approval: StoredApproval): StandingLine[] {
  const asked = askedLines(notebook, approval);
  const run = runOf(notebook, approval, asked);
  return asked.map((line) => standing(notebook, approval, run, line));
}

/** The same with the finished tests that each line may take, those that it stood on before, and what speaks against its result. */
export function approvalLines(notebook: OpenNotebook, approval: StoredApproval): ApprovalLine[] {
  const asked = askedLines(notebook, approval);
  const run = runOf(notebook, approval, asked);
  const everLinked = testsEverLinked(notebook.store, approval.approvalId);
  return asked.map((one) => {
    const line = standing(notebook, approval, run, one);
    const limits = one.planned?.limits ?? [];
    const fitting = fittingOf(notebook, approval, run, one);
    const before = (everLinked.get(one.lineId) ?? []).filter((testId) => testId !== line.result?.testId);
    // One that was corrected since is taken again, before any other.
    const again = line.remark === '' ? undefined : line.result?.testId;
    const offers = fitting.filter(({ testId }) => testId === again || testId !== line.result?.testId).toSorted((a, b) => Number(b.testId === again) - Number(a.testId === again));
    const earlier = before.map((testId) => earlierResult(notebook, testId, limits));
    const offered = offers.slice(0, MOST_OFFERED).map((test) => offeredTest(notebook, test, limits));
    const doubts = line.result ? [...ageDoubts(line.result, approval), ...worseDoubts(notebook, line.result, fitting, one.planned)] : [];
    return {
      ...line,
      result: line.result && { ...line.result, doubts: [...line.result.doubts, ...doubts] },
      earlier,
      offers: offered,
      onlyMeasured: onlyMeasured({ limited: limits.length > 0, result: line.result, earlier, offers: offered }),
    };
  });
}

function askedLines({ store, methods }: OpenNotebook, { approvalId, planId, version }: StoredApproval): Asked[] {
  const stored = linesOfApproval(store, approvalId);
  const planned = findPlanVersion(store, planId, version)?.content.lines ?? [];
  return [
    ...planned.map((line) => {
      const method = methods.find(line.methodId);
      return { lineId: line.lineId, planned: line, method, title: method?.title ?? line.methodId, stored: stored.find(({ lineId }) => lineId === line.lineId) };
    }),
    ...stored.filter(({ addedSeq }) => addedSeq > 0).map((line) => ({ lineId: line.lineId, planned: null, method: undefined, title: line.title, stored: line })),
  ];
}

function runOf({ store }: OpenNotebook, approval: StoredApproval, asked: Asked[]): Run {
  const samples = samplesOfApproval(store, approval);
  const lineOf = new Map(asked.flatMap(({ lineId, stored }) => (stored?.testId ? [[stored.testId, lineId] as const] : [])));
  return { samples, tests: finishedTestsOf(store, samples), lineOf };
}

/** Tests that may fill a line: a test fills one line only. */
function fittingOf(notebook: OpenNotebook, { planId }: StoredApproval, { tests, lineOf }: Run, { lineId, planned }: Asked): TestOfRun[] {
  const free = tests.filter(({ testId }) => (lineOf.get(testId) ?? lineId) === lineId);
  return planned ? fittingTests(notebook, free, planId, planned) : free;
}

function standing(notebook: OpenNotebook, approval: StoredApproval, run: Run, line: Asked): StandingLine {
  const { lineId, planned, method, title } = line;
  return {
    lineId,
    added: planned === null,
    title,
    momentText: planned ? momentText(planned.moment) : '',
    preparation: planned?.preparation ?? '',
    replicatesText: planned ? replicatesText(planned, method) : '',
    limitTexts: planned ? lineLimitTexts(planned, method) : [],
    ...filling(notebook, approval, run, line),
  };
}

type Filled = Pick<ApprovalLine, 'state' | 'tooFew' | 'remark' | 'result' | 'observation' | 'waiver'>;

function filling(notebook: OpenNotebook, approval: StoredApproval, run: Run, line: Asked): Filled {
  const { stored, planned } = line;
  if (!stored) return { state: 'open', tooFew: '', remark: '', result: null, observation: null, waiver: null };
  const { testId, inOrder, remark, observedBy, observedAt, waivedOf, waiverReason, waivedBy, waivedAt } = stored;
  const linked = testId === null ? null : lineResult(notebook, testId, planned?.limits ?? []);
  const notAnyMore = testId === null ? '' : whyNotAnyMore(notebook, run, testId, stored.finishedId);
  const few = testId === null || !planned || notAnyMore !== '' ? null : tooFew(notebook.store, testId, planned, line.method);
  const measurable = (planned?.limits.length ?? 0) > 0;
  const overtaken = inOrder !== null && measurable && fittingOf(notebook, approval, run, line).length > 0;
  const by: LineFilling = linked
    ? { by: 'result', verdict: linked.verdict, current: notAnyMore === '', enough: few === null }
    : inOrder === null
      ? { by: 'nothing' }
      : { by: 'observation', inOrder: inOrder === 1, measurable, overtaken };
  const state = lineState(by, waivedOf);
  return {
    state,
    tooFew: few?.text ?? '',
    remark: overtaken ? 'There is a result by now, which alone decides this line: take it.' : notAnyMore,
    result: linked?.result ?? null,
    observation: inOrder === null ? null : { inOrder: inOrder === 1, remark, ...signer(notebook, observedBy, observedAt) },
    waiver: waivedOf === null ? null : { reason: waiverReason, holds: state === 'waived', ...signer(notebook, waivedBy, waivedAt) },
  };
}

/** Why a linked test does not fill its line as it did when it was linked, in one sentence; '' where it does. */
function whyNotAnyMore({ store }: OpenNotebook, { samples }: Run, testId: string, finishedId: string | null): string {
  const { state, sampleId } = loadTest(store, testId);
  if (state !== 'finished') return 'Something was corrected since: finish the test again, then take its result.';
  if (finishingEntry(store, testId) !== finishedId) return 'The test was finished anew since: look at its result and take it again.';
  if (samples.some((sample) => sample.sampleId === sampleId)) return '';
  return `Sample ${findSample(store, sampleId)?.code ?? ''} does not stand for this press run any more: take a result of one that does.`;
}

function signer({ store }: OpenNotebook, personId: string | null, at: string | null): { name: string; role: string; at: string } {
  const person = findPerson(store, personId ?? '');
  return { name: person?.name ?? personId ?? '', role: person?.role ?? '', at: at ?? '' };
}
