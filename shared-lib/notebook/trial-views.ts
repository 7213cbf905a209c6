import type { TableColumn } from '../calculation/table-column.ts';
import type { CalculationResult, Flag } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import type { StripSpec } from '../figure/strip.ts';
import type { Component, Factor, Response, StudyReading } from './trial-entries.ts';

/** What the Trials screen is given. */

export interface TrialSetLine {
  trialSetId: string;
  title: string;
  question: string;
  product: string;
  addedAt: string;
  trials: number;
  /** Name of the control, '' while there is none. */
  control: string;
  responses: number;
  samples: number;
}

/** Trials down, responses across. */
export interface TrialSetView {
  trialSetId: string;
  title: string;
  question: string;
  product: string;
  addedAt: string;
  addedBy: string;
  factors: Factor[];
  responses: ResponseView[];
  trials: TrialRow[];
  /** What the reader must know of the set as a whole: no control, no overall desirability and why. */
  notes: string[];
}

/** The head of a column. */
export interface ResponseView extends Response {
  /** `METHOD/PROPERTY`, the key into `TrialRow.cells`. */
  key: string;
  methodTitle: string;
  title: string;
  unit: string;
  kind: 'number' | 'grade';
  /** 'higher is better', 'lower is better', 'best at 38 mN/m'. */
  goalText: string;
  /** The measurement study of the method for this property, '' if there is none. */
  studyText: string;
  /** `null` where it was not asked for (`trialSet.get` with `responses`). */
  comparison: Comparison | null;
}

/** How the trials differ in one response. */
export interface Comparison {
  /** Name of the procedure, e.g. 'Dunnett against the control', '' where nothing can be compared. */
  procedure: string;
  /** Why this one, in words. */
  why: string[];
  /** One sentence each, the control's neighbours first. */
  conclusions: string[];
  flags: Flag[];
  /** The scale that all strips of the column share. */
  domain: [number, number];
}

/** A line of the table. */
export interface TrialRow {
  trialId: string;
  name: string;
  control: boolean;
  note: string;
  components: Component[];
  factors: Record<string, number>;
  formulation: FormulationView;
  samples: { sampleId: string; code: string }[];
  /** By `ResponseView.key`; only the responses that were asked for. */
  cells: Record<string, TrialCell>;
  /** Overall desirability, 0–1; `null` with a note in the set where it cannot be given or not every response was asked for. */
  desirability: number | null;
}

export interface TrialCell {
  /** Readings. */
  n: number;
  /** The mean (of grades: the median), for sorting; `null` where there is none. */
  value: number | null;
  /** '3.12 N/15 mm', 'median 4', '—'. */
  text: string;
  /** '95 % interval 2.9 to 3.3', or ''. */
  intervalText: string;
  /** On the column's scale; bracketed and one-sided readings are shown as such. */
  strip: StripSpec | null;
  /** Trials that share a letter cannot be told apart; '' where no letters are given. */
  letters: string;
  difference: TrialDifference | null;
  /** Of this response alone, 0–1. */
  desirability: number | null;
  /** Why something is missing here: 'One reading: no interval.' or ''. */
  note: string;
  /** Where the readings come from. */
  tests: { testId: string; sampleCode: string; n: number; finishedOn: string }[];
}

/** A trial against the control. */
export interface TrialDifference {
  /** Trial minus control; `null` for grades, which have no distance. */
  value: number | null;
  /** '+0.42 N/15 mm', or ''. */
  text: string;
  intervalText: string;
  /** Adjusted for the number of comparisons. */
  pValue: number | null;
  /** `better`/`worse`: the interval lies wholly on that side; `open`: cannot be told apart. A word and a shape, never colour alone. */
  word: 'better' | 'worse' | 'different' | 'open';
  /** '*' where it can be told from the control, else ''. */
  star: string;
}

/** A formulation worked out. */
export interface FormulationView {
  totalParts: number;
  /** Same order as the components. */
  percent: number[];
  /** `null` where a component does not state its. */
  solidsPct: number | null;
  costPerKg: number | null;
  /** Component by component, in percent of the whole; empty for the control and without one. */
  againstControl: { name: string; controlPct: number; pct: number; differencePct: number; change: 'added' | 'left out' | 'more' | 'less' | 'same' }[];
  /** What is wrong with it in words, e.g. no parts stated. */
  notes: string[];
}

/** How many readings it takes. */
export interface PlanView {
  perTrial: number;
  /** One sentence: '14 per trial would show a difference of 0.2 N/15 mm with 90 % probability'. */
  text: string;
  /** The spread within trials that it was worked out with, and from how many readings. */
  standardDeviation: number;
  degreesOfFreedom: number;
  unit: string;
  result: CalculationResult;
}

export interface EquivalenceView {
  /** `true`: shown to be equivalent within the bounds. */
  shown: boolean;
  text: string;
  result: CalculationResult;
  figure: Figure;
}

/** A response against one or two factors. */
export interface FactorView {
  /** One sentence each. */
  conclusions: string[];
  figures: Figure[];
  result: CalculationResult;
  columns: TableColumn[];
}

export interface TradeOffView {
  text: string;
  figure: Figure;
  /** Names of the trials that no other beats in both. */
  best: string[];
}

export interface StudyLine {
  studyId: string;
  methodId: string;
  methodTitle: string;
  property: string;
  title: string;
  unit: string;
  kind: 'number' | 'grade';
  recordedAt: string;
  recordedBy: string;
  parts: number;
  appraisers: string[];
  readings: number;
  remark: string;
  /** 'gauge s 0.12 N/15 mm, 27 % of the spread, 2026-01-30'. */
  text: string;
  /** The one that verdicts of this property use now: the last recorded. */
  inUse: boolean;
}

export interface StudyView extends StudyLine {
  values: StudyReading[];
  result: CalculationResult;
  columns: TableColumn[];
}

/** Something that can be charted: a property of a method on a product, tested more than once. */
export interface ChartChoice {
  methodId: string;
  methodTitle: string;
  property: string;
  title: string;
  product: string;
  tests: number;
}

export interface ControlChartView {
  title: string;
  unit: string;
  chart: 'individuals' | 'xbar-r' | 'xbar-s';
  /** What the chart says: in control, or which tests stand out and by which rule. */
  conclusions: string[];
  figures: Figure[];
  /** In the order of the chart. */
  tests: { testId: string; sampleCode: string; finishedOn: string; value: number; n: number; outside: boolean }[];
  control: CalculationResult;
  /** `null` without a limit or where it cannot be given; then a sentence in `capabilityText`. */
  capability: CalculationResult | null;
  capabilityText: string;
  limits: { lower: number | null; upper: number | null; source: string };
}
