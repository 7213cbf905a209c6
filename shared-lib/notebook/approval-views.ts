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
  /** The same in words: 'signed, 2 lines waived'. */
  standingWords: string;
  /** What blocks a draft, who signed or withdrew it: one sentence. */
  standingText: string;
}

export interface Approval extends ApprovalHeading {
  planId: string;
  /** Of the plan now; another than `version` where it was changed since. The approval keeps its own. */
  newestVersion: string;
  note: string;
  lots: LotView[];
  /** That stand for the press run. */
  samples: ApprovalSample[];
  /** Nobody has said which: all samples of the job. Absent where it was signed before that was asked: so too. */
  allSamples?: boolean;
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
  /** Lots that were retired after it was signed, one sentence each. */
  retiredLater: string[];
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
  /** '1 of 10 positions': complete rows of its result where they are fewer than asked for; '' or absent otherwise. */
  tooFew?: string;
  /** Why what filled it does so no more, in one sentence; '' where it does. */
  remark: string;
  result: ApprovalResult | null;
  observation: { inOrder: boolean; remark: string; name: string; role: string; at: string } | null;
  /** Also one that holds no more, because the line stands otherwise now. */
  waiver: { reason: string; name: string; role: string; at: string; holds: boolean } | null;
  /** Results that filled it before another did, the newest first; absent where it was signed before they were named. */
  earlier?: EarlierResult[];
  /** Finished tests of the approval's samples that may fill it, the likeliest first. */
  offers: { testId: string; sampleCode: string; roll: string; method: string; finishedAt: string; verdict: VerdictWord }[];
  /** Why what a person saw does not fill it, in one sentence; '' where it may. Absent once it is signed. */
  onlyMeasured?: string;
}

/** The test that fills a line. */
export interface ApprovalResult {
  testId: string;
  method: string;
  sampleCode: string;
  /** Of the sample; absent where it was signed before it was shown. */
  roll?: string;
  finishedAt: string;
  finishedBy: string;
  /** The worst of its properties; absent where it was signed before it was kept. */
  verdict?: VerdictWord;
  /** Each compared with the plan's limit, and with the test's own where that is another. */
  properties: PropertyLine[];
  /** What makes it doubtful and was not read from it: an expired fluid, an instrument out of calibration, a bad lot; that others say otherwise, that it is old. One sentence each. */
  doubts: string[];
}

export interface ApprovalSample {
  sampleId: string;
  code: string;
  roll?: string;
}

/** A result that filled a line until another did. */
export interface EarlierResult {
  testId: string;
  sampleCode: string;
  roll: string;
  /** '' where it is not finished any more. */
  finishedAt: string;
  /** 'Mean bond strength 0.4 N/15 mm'. */
  text: string;
  verdict: VerdictWord;
}

/** What the notebook knows about a job: a draft begins from it. */
export interface JobFacts {
  product: string;
  customer: string;
  samples: { sampleId: string; code: string; roll: string; addedAt: string; lotIds: string[] }[];
  lotIds: string[];
  /** The plan that a sample of the job follows, or that is made for the product; `null` for none. */
  planId: string | null;
  /** The approval of this job that stands, which a new one would replace. */
  signed: { approvalId: string; pressRun: string }[];
}
