import type { TableColumn } from '../calculation/table-column.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { CellValue, Limit } from '../method/method.ts';
import type { PropertyVerdict, VerdictWord } from '../method/property-verdict.ts';
import type { PhotoView } from './attachment-views.ts';
import type { MaterialKind } from './entry.ts';
import type { Layer } from '../material/layer.ts';
import type { LotView } from './lot-view.ts';
import type { LotLine, LotPlaceView } from './material-views.ts';
import type { SampleDetails } from './sample-entries.ts';
import type { TestState } from './test-state.ts';
import type { WitnessLine } from './witness-views.ts';
import type { StripSpec } from '../figure/strip.ts';

/** What the screens are given: plain data, made from the notebook by the application. */

export interface Person {
  personId: string;
  name: string;
  initials: string;
  role: string;
  /** Takes the bench and signs no more. */
  retired: boolean;
  /** '' unless retired. */
  retiredReason: string;
  /** For signing. */
  hasPassphrase: boolean;
}

export interface SessionView {
  /** `null` while no notebook is open. */
  notebook: {
    /** As in `recent`; two notebooks may have one file name. */
    handle: string;
    fileName: string;
    title: string;
    laboratory: string;
    readOnly: boolean;
    /** Why it is read-only, in one sentence, or ''. */
    readOnlyReason: string;
    entries: number;
    /** Hash of the last entry. */
    chainHash: string;
    /** What the store had to tell when it opened (replayed entries, a torn line dropped). */
    openingNotes: string[];
  } | null;
  atBench: Person | null;
  people: Person[];
  /** The last action of the person at the bench that could be undone, in words; '' where there is none. */
  undoable: string;
  recent: { handle: string; fileName: string; openedAt: string }[];
  version: string;
}

export interface MaterialView {
  materialId: string;
  kind: MaterialKind;
  name: string;
  supplier: string;
  description: string;
  /** Its structure; none where it was not said. */
  layers: Layer[];
  lots: LotLine[];
}

export interface TestLine {
  testId: string;
  sampleId: string;
  sampleCode: string;
  product: string;
  methodId: string;
  methodVersion: string;
  methodTitle: string;
  startedAt: string;
  startedBy: string;
  /** `outdated`: corrected after it was finished; its stored result no longer follows from the readings. */
  state: TestState;
  readings: number;
  headline: PropertyLine[];
  /** The worst of its verdicts. */
  verdict: VerdictWord;
}

/** A property with its verdict and strip: one line of a list, a summary or a section. */
export interface PropertyLine {
  key: string;
  title: string;
  unit: string;
  /** e.g. '38.4 mN/m', '≥ 3.1 N/15 mm', 'between 38 and 40 mN/m', '—'. */
  text: string;
  /** e.g. '95 % interval 37.6 to 39.2', or '' where there is none. */
  intervalText: string;
  n: number;
  limitText: string;
  /** The measurement study of the method, as it counts in the verdict; '' if there is none. Absent in reports frozen before there were any. */
  studyText?: string;
  verdict: PropertyVerdict;
  strip: StripSpec | null;
}

export interface SampleLine {
  sampleId: string;
  code: string;
  product: string;
  job: string;
  roll: string;
  addedAt: string;
  tests: number;
  verdict: VerdictWord;
  /** Disposed of, or undone. */
  retired: boolean;
  /** Added by mistake and taken back. */
  undone: boolean;
}

export interface SampleView extends SampleLine, SampleDetails {
  note: string;
  /** '' unless disposed of. */
  retiredReason: string;
  lots: LotView[];
  /** The same with all that went into them. */
  madeFrom: LotPlaceView[];
  testLines: TestLine[];
}

export interface CellView {
  value: CellValue;
  /** As typed. */
  typed: string;
  /** How many times it was corrected. */
  corrections: number;
  /** Warnings such as 'outside the usual range 20–60'. */
  warning: string;
  /** From what the program filled it in, while nobody has typed over it; absent: it did not. */
  filledIn?: string;
}

export interface RowView {
  row: string;
  cells: Record<string, CellView>;
  voided: { reason: string } | null;
  remark: string;
}

/** Everything the bench sheet shows for one test; returned after each entry so that the result is live. */
export interface BenchSheetView {
  test: TestLine;
  /** No more of it than sheet and report show: it is made anew after each reading. */
  sample: Pick<SampleView, 'sampleId' | 'code' | 'product' | 'job' | 'roll' | 'lots'>;
  /** The line of a plan that it was made for; absent: none. */
  planned?: { planId: string; plan: string; momentText: string; preparation: string; replicatesText: string };
  conditions: Record<string, CellView>;
  rows: RowView[];
  limits: Limit[];
  rule: 'simple' | 'guarded';
  /** The live result, or why there is none yet. */
  live: { result: CalculationResult; lines: PropertyLine[]; columns: TableColumn[] } | null;
  /** One sentence: what is missing or wrong; `where` is `rows[INDEX].KEY` or `conditions.KEY` or ''. */
  missing: { where: string; text: string } | null;
  traces: Record<string, { name: string; points: number }>;
  /** Absent: none. */
  photos?: Record<string, PhotoView>;
  /** Names of what item fields hold, by id; absent: none. */
  items?: Record<string, string>;
  /** Names that spectra have in the files they came from, by `ROW-KEY`, of a condition `condition-KEY`; absent: none. */
  spectrumFiles?: Record<string, string>;
  remark: string;
  /** Why it was withdrawn; absent or '' unless it was. */
  withdrawn?: string;
  /** Who has read it or a part of it and signed; absent: nobody. */
  witnesses?: WitnessLine[];
}

export interface VerifyView {
  entries: number;
  chainHash: string;
  intact: boolean;
  /** One sentence each: which entry or result differs, and how. */
  problems: string[];
  /** What is odd and no damage, one sentence each. */
  remarks: string[];
}

export interface ReportLine {
  reportId: string;
  number: string;
  title: string;
  recipient: string;
  issuedAt: string;
  issuedBy: string;
  tests: number;
  verdict: VerdictWord;
  replaces: string | null;
  replacedBy: string | null;
  /** Lots of its samples that were retired since it was issued, one sentence each. */
  retiredLots: string[];
}

/** The first lines of a CSV trace and how they were read, for the person to confirm or change. */
export interface TracePreview {
  lines: string[];
  columns: string[];
  reading: import('./entry.ts').TraceReading;
  points: number;
  displacementMm: { low: number; high: number };
  forceN: { low: number; high: number };
  /** A thinned trace for drawing. */
  outline: [number, number][];
  notes: string[];
  /** Names of further traces in the same file, when it holds several. */
  blocks: string[];
}
