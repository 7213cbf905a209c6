import type { ApprovalStanding } from '../approval/approval-standing.ts';
import type { LineState } from '../approval/line-state.ts';
import type { Caution } from '../method/method.ts';
import type { VerdictWord } from '../method/property-verdict.ts';
import type { PropertyLine } from './views.ts';
import type { LotView } from './lot-view.ts';

/** A press approval in lists. */
export interface ApprovalHeading {
  approvalId: string;
  product: string;
  job: string;
  customer: string;
  pressRun: string;
  plan: string;
  /** Of the plan, that the checklist was drawn from. */
  version: string;
  draftedAt: string;
  draftedBy: string;
  lines: number;
  standing: ApprovalStanding;
  /** What blocks a draft, who signed or withdrew it: one sentence. */
  standingText: string;
}

export interface Approval extends ApprovalHeading {
  planId: string;
  /** Of the plan now; another than `version` where it was changed since. The approval keeps its own. */
  newestVersion: string;
  note: string;
  lots: LotView[];
  /** Samples of the job. */
  samples: { sampleId: string; code: string }[];
  checklist: ApprovalLine[];
  /** '6 lines: 4 meet their limits …' */
  summary: string;
  /** What blocks it; '' when nothing does. */
  blocking: string;
  /** Cautions of the plan's methods, each once. */
  cautions: { caution: Caution; methods: string }[];
  /** Stands for all that is signed; a signature carries it, so that nothing is signed unseen. */
  digest: string;
  signed: SignedName | null;
  /** Results that were corrected after it was signed, one sentence each. */
  correctedLater: string[];
  withdrawn: (SignedName & { reason: string }) | null;
  replaces: { approvalId: string; reason: string } | null;
  replacedBy: string | null;
}

/** Who signed, and what. */
export interface SignedName {
  name: string;
  role: string;
  at: string;
  /** '' where the words are said elsewhere. */
  meaning: string;
}

export interface ApprovalLine {
  lineId: string;
  /** Added by a person; the others are those of the plan. */
  added: boolean;
  title: string;
  /** '24 h after printing', '' for one that was added. */
  momentText: string;
  preparation: string;
  replicatesText: string;
  limitTexts: string[];
  state: LineState;
  /** Why its result is to be taken again, in one sentence; '' where it stands as it was linked. */
  remark: string;
  result: ApprovalResult | null;
  observation: { inOrder: boolean; remark: string; name: string; role: string; at: string } | null;
  /** Also one that holds no more, because the line stands otherwise now. */
  waiver: { reason: string; name: string; role: string; at: string; holds: boolean } | null;
  /** Finished tests of the job that may fill it, the likeliest first. */
  offers: { testId: string; sampleCode: string; method: string; finishedAt: string; verdict: VerdictWord }[];
}

/** The test that fills a line. */
export interface ApprovalResult {
  testId: string;
  method: string;
  sampleCode: string;
  finishedAt: string;
  finishedBy: string;
  /** Each compared with the plan's limit, and with the test's own where that is another. */
  properties: PropertyLine[];
  /** What makes it doubtful and was not read from it: an expired fluid, an instrument out of calibration, a bad lot. One sentence each. */
  doubts: string[];
}

/** What the notebook knows about a job: a draft begins from it. */
export interface JobFacts {
  product: string;
  customer: string;
  samples: { sampleId: string; code: string }[];
  lotIds: string[];
  /** The plan that a sample of the job follows, or that is made for the product; `null` for none. */
  planId: string | null;
  /** The approval of this job that stands, which a new one would replace. */
  signed: { approvalId: string; pressRun: string }[];
}
