import type { Layer } from '../material/layer.ts';
import type { MaterialKind } from './entry.ts';
import type { LotDetails } from './material-entries.ts';
import type { LotView } from './lot-view.ts';
import type { TestState } from './test-state.ts';
import type { VerdictWord } from '../method/property-verdict.ts';

/** A lot with all that is said of it. */
export interface LotLine extends LotView, LotDetails {
  retiredAt: string | null;
  retiredReason: string;
}

/** A lot in a list that shows by indentation what went into what. */
export interface LotPlaceView {
  lotId: string;
  /** 'PET 12 µm, lot OV-2601-031' */
  name: string;
  kind: MaterialKind;
  /** 0 for what went in directly. */
  depth: number;
  /** Listed with what it is made of further up already. */
  again: boolean;
  /** Why it is not to be relied on, as the rest of a sentence that begins with its name; '' where it is. */
  doubt: string;
}

/** What the page of a lot shows. */
export interface LotPage extends LotLine {
  layers: Layer[];
  doubt: string;
  madeFrom: LotPlaceView[];
  wentInto: LotPlaceView[];
}

/** All that stands on a lot: on itself and on whatever was made from it. */
export interface RecallView {
  lotId: string;
  /** 'PET 12 µm, lot OV-2601-031' */
  lot: string;
  lots: LotPlaceView[];
  /** `through`: the lot by which it is made from this one. */
  samples: { sampleId: string; code: string; product: string; job: string; roll: string; through: string; disposedOf: boolean }[];
  tests: { testId: string; sampleCode: string; method: string; state: TestState | 'withdrawn'; verdict: VerdictWord; finishedOn: string }[];
  /** `by`: whether its formulation names such a lot, one of its samples is made of it, or both. */
  trials: { trialId: string; trialSetId: string; name: string; set: string; by: 'formulation' | 'sample' | 'formulation and sample' }[];
  reports: { reportId: string; number: string; title: string; recipient: string; issuedOn: string; replaced: boolean }[];
  approvals: { approvalId: string; title: string; customer: string; pressRun: string; state: 'draft' | 'signed' | 'withdrawn' | 'replaced' }[];
}
