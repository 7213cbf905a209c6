import { approvalStanding, standingWords, type ApprovalStanding } from '../../../shared-lib/approval/approval-standing.ts';
import { blockingSummary, checklistSummary } from '../../../shared-lib/approval/checklist-summary.ts';
import { isBlocking } from '../../../shared-lib/approval/line-state.ts';
import type { Caution } from '../../../shared-lib/method/method.ts';
import type { Approval, ApprovalHeading, ApprovalLine, SignedName } from '../../../shared-lib/notebook/approval-views.ts';
import { lineName } from '../../../shared-lib/plan/line-texts.ts';
import type { ApprovalContent } from '../../../shared-lib/report/approval-content.ts';
import { sha256Hex } from '../../store/journal.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { correctedTests, countAddedLines, findApproval, samplesOfApproval, type StoredApproval } from '../queries/approvals.ts';
import { lotsRetiredSinceSigning } from '../queries/lots-retired-since.ts';
import { lotsOfApproval } from '../queries/materials.ts';
import { nameOf, personAt } from '../queries/people.ts';
import { findPlan, findPlanVersion } from '../queries/plans.ts';
import { findSample } from '../queries/samples.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { approvalLines, standingLines, type StandingLine } from './approval-lines.ts';

const MOST_NAMED = 3;

/** @throws Refusal when there is no such approval */
export function requireApproval({ store }: OpenNotebook, approvalId: string): StoredApproval {
  const approval = findApproval(store, approvalId);
  if (!approval) throw new Refusal('not-found', 'This press approval is not in the notebook.');
  return approval;
}

/** A draft as it stands now; a signed one as it was frozen, with what came later. */
export function approvalView(notebook: OpenNotebook, approvalId: string): Approval {
  const stored = requireApproval(notebook, approvalId);
  const view = stored.contentSha256 === null ? draftView(notebook, stored) : frozenApproval(notebook, stored.contentSha256).approval;
  const later = laterOf(notebook, stored);
  return {
    ...view,
    ...headingOf(notebook, stored, view.checklist, later),
    newestVersion: findPlan(notebook.store, stored.planId)?.version ?? stored.version,
    signed: signedName(notebook, stored.signedBy, stored.signedAt, stored.signedSeq, stored.signedMeaning),
    correctedLater: later.corrected,
    retiredLater: later.retired,
    withdrawn: withdrawnOf(notebook, stored),
    replacedBy: stored.replacedBy,
  };
}

/** Only a draft is worked out line by line: nothing blocks one that was signed or withdrawn. */
export function approvalHeading(notebook: OpenNotebook, stored: StoredApproval): ApprovalHeading {
  return headingOf(notebook, stored, stored.signedSeq === null && stored.withdrawnSeq === null ? standingLines(notebook, stored) : [], laterOf(notebook, stored));
}

/** What came to light after a signature, one sentence each. */
interface Later {
  corrected: string[];
  retired: string[];
}

function headingOf(notebook: OpenNotebook, stored: StoredApproval, checklist: StandingLine[], later: Later): ApprovalHeading {
  const { store } = notebook;
  const { approvalId, planId, version, product, job, customer, pressRun, draftedAt, draftedBy } = stored;
  const blocking = checklist.filter(({ state }) => isBlocking(state));
  const standing = approvalStanding({
    signed: stored.signedSeq !== null,
    withdrawn: stored.withdrawnSeq !== null,
    replaced: stored.replacedSeq !== null,
    correctedLater: later.corrected.length,
    retiredLater: later.retired.length,
    blocking: blocking.length,
  });
  const content = findPlanVersion(store, planId, version)?.content;
  return {
    approvalId,
    product,
    job,
    customer,
    pressRun,
    plan: content?.title ?? '',
    version,
    draftedAt,
    draftedBy: nameOf(store, draftedBy),
    lines: (content?.lines.length ?? 0) + countAddedLines(store, approvalId),
    standing,
    standingWords: standingWords(standing, stored.contentSha256 === null ? 0 : waivedLines(notebook, stored.contentSha256)),
    standingText: standingText(store, stored, standing, blocking, later),
  };
}

/** What a person signed, as it was kept. @throws Refusal when the file is missing */
export function frozenApproval({ store }: OpenNotebook, sha256: string): ApprovalContent {
  const bytes = store.attachment(sha256);
  if (!bytes) throw new Refusal('not-found', 'The file of this press approval is missing from the notebook.');
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as ApprovalContent;
}

/** What is signed never changes, and its file is large: the lines that were waived are counted once. */
function waivedLines(notebook: OpenNotebook, sha256: string): number {
  const known = notebook.waivedLines.get(sha256) ?? frozenApproval(notebook, sha256).approval.checklist.filter(({ state }) => state === 'waived').length;
  notebook.waivedLines.set(sha256, known);
  return known;
}

type Draft = Omit<Approval, keyof ApprovalHeading | 'newestVersion' | 'signed' | 'correctedLater' | 'retiredLater' | 'withdrawn' | 'replacedBy'>;

function draftView(notebook: OpenNotebook, stored: StoredApproval): Draft {
  const { store } = notebook;
  const { approvalId, planId, version, product, job, customer, pressRun, note, replaces, replacesReason } = stored;
  const checklist = approvalLines(notebook, stored);
  const lots = lotsOfApproval(store, approvalId);
  const what = {
    planId,
    note,
    lots,
    samples: samplesOfApproval(store, stored).map(({ sampleId, code, roll }) => ({ sampleId, code, roll })),
    allSamples: stored.samplesSaid === 0,
    summary: checklistSummary(checklist.map(({ state, waiver }) => ({ state, waivedBy: waiver?.name ?? '' }))),
    blocking: blockingSummary(checklist.map(({ state }) => state)),
    cautions: cautionsOf(notebook, stored),
    replaces: replaces === null ? null : { approvalId: replaces, reason: replacesReason },
  };
  const signedFor = { ...what, version, product, job, customer, pressRun, checklist: checklist.map(asSigned) };
  return {
    ...what,
    checklist,
    digest: sha256Hex(Buffer.from(JSON.stringify(signedFor), 'utf8')),
  };
}

/** A line without what it may still be filled by. */
export function asSigned({ onlyMeasured: _, ...line }: ApprovalLine): ApprovalLine {
  return { ...line, offers: [] };
}

function cautionsOf(notebook: OpenNotebook, { planId, version }: StoredApproval): Approval['cautions'] {
  const methodsByText = new Map<string, { caution: Caution; methods: Set<string> }>();
  for (const { methodId } of findPlanVersion(notebook.store, planId, version)?.content.lines ?? []) {
    const method = notebook.methods.find(methodId);
    for (const caution of method?.cautions ?? []) {
      const known = methodsByText.get(caution.text) ?? { caution, methods: new Set() };
      methodsByText.set(caution.text, { caution, methods: known.methods.add(method!.shortTitle) });
    }
  }
  return [...methodsByText.values()].map(({ caution, methods }) => ({ caution, methods: [...methods].join(', ') }));
}

/** By the name and in the role of that day, as it stands on the page. */
function signedName({ store }: OpenNotebook, personId: string | null, at: string | null, seq: number | null, meaning: string): SignedName | null {
  if (personId === null || at === null || seq === null) return null;
  const person = personAt(store, personId, seq);
  return { name: person?.name ?? personId, role: person?.role ?? '', at, meaning };
}

function withdrawnOf(notebook: OpenNotebook, { withdrawnBy, withdrawnAt, withdrawnSeq, withdrawnReason }: StoredApproval): Approval['withdrawn'] {
  const by = signedName(notebook, withdrawnBy, withdrawnAt, withdrawnSeq, '');
  return by && { ...by, reason: withdrawnReason };
}

function laterOf(notebook: OpenNotebook, stored: StoredApproval): Later {
  const { store, worked } = notebook;
  const retired = worked.get('lots retired since signing', store.entryCount, () => lotsRetiredSinceSigning(store));
  return { corrected: correctedLater(notebook, stored), retired: retired.get(stored.approvalId) ?? [] };
}

/** Nothing for a draft: there, such a line is open again. */
function correctedLater(notebook: OpenNotebook, { approvalId, signedSeq }: StoredApproval): string[] {
  if (signedSeq === null) return [];
  const { store, methods } = notebook;
  return correctedTests(store, approvalId).map((testId) => {
    const test = loadTest(store, testId);
    const now = test.state === 'finished' ? 'and finished anew' : 'and not finished again yet';
    return `${methods.findOfTest(test)?.shortTitle ?? test.methodId} on ${findSample(store, test.sampleId)?.code ?? ''} was corrected after it was approved, ${now}.`;
  });
}

/** What blocks, by name where that is short. */
function blockingText(blocking: StandingLine[]): string {
  const names = blocking.length <= MOST_NAMED ? `: ${blocking.map(lineName).join('; ')}` : '';
  return `Of its lines, ${blockingSummary(blocking.map(({ state }) => state))}${names}.`;
}

function standingText(store: NotebookStore, stored: StoredApproval, standing: ApprovalStanding, blocking: StandingLine[], { corrected, retired }: Later): string {
  switch (standing) {
    case 'blocked':
      return blockingText(blocking);
    case 'ready to sign':
      return 'Every line is filled or waived.';
    case 'signed':
      return `By ${nameOf(store, stored.signedBy ?? '')}.`;
    case 'signed, corrected later':
      return [`Stands on a result that was corrected later: ${corrected.join(' ')}`, ...retired].join(' ');
    case 'signed, lot retired later':
      return `Stands on a lot that was retired later: ${retired.join(' ')}`;
    case 'withdrawn':
      return `By ${nameOf(store, stored.withdrawnBy ?? '')}: ${stored.withdrawnReason}`;
    case 'replaced':
      return 'A later approval takes its place.';
  }
}
