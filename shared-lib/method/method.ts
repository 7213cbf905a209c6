import type { CalculationResult, ResultValue } from '../calculation/result.ts';

/** A test method: data from which the bench sheet, the help and the report section are built, plus its evaluation. */
export interface Method {
  id: string;
  /** Raised whenever fields or evaluation change; a test keeps the version it was started with. */
  version: string;
  title: string;
  /** The short name in lists, e.g. 'Test fluids'. */
  shortTitle: string;
  group: MethodGroup;
  /** Numbers of the standards it follows, e.g. 'ASTM D2578'. */
  standards: string[];
  help: MethodHelp;
  cautions: Caution[];
  /** Asked once per test. */
  conditions: Field[];
  /** The repeated part: one row per position, specimen or exposure. */
  readings: ReadingSheet;
  /** The main calculation, whose version is kept with a finished test. */
  calculation: string;
  properties: Property[];
  /** Readings → result. Pure. Throws InputError whose `field` is `conditions.KEY` or `rows[INDEX].KEY` where it can be said. */
  evaluate: (bench: BenchReadings) => CalculationResult;
  /** What a finished test asks to be done, and by when. Pure: from what was stored of it alone. */
  followUp?: (test: FinishedReadings) => FollowUp[];
}

/** A method without its functions, which do not travel between application and screens. */
export type MethodData = Omit<Method, 'evaluate' | 'followUp'>;

/** What a follow-up is worked out from. */
export interface FinishedReadings {
  results: Record<string, ResultValue>;
  conditions: Record<string, CellValue>;
  /** ISO 8601 date. */
  finishedOn: string;
}

/** Something to do on a sample because of what a test found. */
export interface FollowUp {
  /** Without the sample: 'Test the treatment again'. */
  what: string;
  /** ISO 8601 date. */
  dueOn: string;
  /** One sentence. */
  why: string;
  /** Methods by which a later test of the same sample settles it. */
  settledBy: string[];
}

export type MethodGroup =
  | 'surface-energy'
  | 'bond-strength'
  | 'fade'
  | 'colour'
  | 'mechanical'
  | 'cure'
  | 'release'
  | 'liquid'
  | 'in-house';

export interface MethodHelp {
  shows: string;
  how: string[];
  spoils: string[];
}

export interface Caution {
  hazard: 'toxic' | 'solvent' | 'uv' | 'ozone' | 'blade' | 'heat' | 'food-contact' | 'electrical';
  /** What to heed; defers to the safety data sheet, local codes and licensed practice. */
  text: string;
}

interface FieldBase {
  /** Field name; carries its unit where it has one (`widthMm`). */
  key: string;
  label: string;
  /** Printed beside the field and in the column head. */
  unit?: string;
  /** Key of the condition, a choice, that says the unit where the test chooses it. */
  unitFrom?: string;
  required?: boolean;
  hint?: string;
}

export interface NumberField extends FieldBase {
  kind: 'number';
  min: number;
  max: number;
  /** `min` or `max` itself is not allowed. */
  minExclusive?: boolean;
  default?: number;
  /** Values outside are accepted with a flag. */
  usual?: { min: number; max: number };
  /** Keys ↑ ↓ step through these (test-fluid values); any other value in range may be typed. */
  steps?: number[];
  /** A new row starts with the value of the row above. */
  carryDown?: boolean;
}

export interface TextField extends FieldBase {
  kind: 'text';
  maxLength: number;
  /** `date`: a day of the calendar as ISO 8601 writes it, 2026-03-09. */
  format?: 'date';
  default?: string;
  carryDown?: boolean;
}

export interface ChoiceField extends FieldBase {
  kind: 'choice';
  /** `shortcut`: one key that picks the choice in the cell. */
  choices: { value: string; label: string; shortcut: string }[];
  default?: string;
  carryDown?: boolean;
}

/** A force–displacement trace read from a CSV file, kept as an attachment. */
export interface TraceField extends FieldBase {
  kind: 'trace';
}

export type Field = NumberField | TextField | ChoiceField | TraceField;

export interface ReadingSheet {
  /** 'position', 'specimen', 'exposure': names a row in lists and messages. */
  rowName: string;
  fields: Field[];
  /** Rows laid out on a new sheet. */
  startRows: number;
  /** Fewer complete rows than this and the sheet says what is missing. */
  minRows: number;
  maxRows: number;
}

/** A property that the method yields, and how it compares with a limit. */
export interface Property {
  /** Name in `CalculationResult.results`. */
  key: string;
  title: string;
  unit: string;
  better: 'higher' | 'lower' | 'within' | 'none';
  /** A grade has an order but no distances: it is compared by ranks. Left out: a number. */
  kind?: 'number' | 'grade';
  /** Of a grade: the ends of its scale. Left out: 0 to 5. */
  scale?: { low: number; high: number };
  /** A limit may be set on it. */
  limited: boolean;
  /** The one or two that lists and the report summary show. */
  headline: boolean;
  /** Id of the figure whose readings, on its y axis, are this property's single values: the dots of its strip. */
  readingsFigure?: string;
}

/** Where a property must lie. `null` leaves that side open. */
export interface Limit {
  property: string;
  lower: number | null;
  upper: number | null;
  /** Who asks for it: customer specification, common practice … */
  source: string;
}

export interface Trace {
  name: string;
  /** Same length, mm and N, in the order of the file. */
  displacementMm: Float64Array;
  forceN: Float64Array;
}

export type CellValue = number | string | null;

/** One row as the evaluation sees it. Its index is that on the sheet; a row that is voided or incomplete is passed as a blank one. */
export interface BenchRow {
  /** Stable id of the row, `r1`, `r2` … */
  row: string;
  /** Sparse: what has not been entered is absent. A trace cell holds the key into `traces`. */
  values: Record<string, CellValue>;
}

/** The readings of one test, ready for `evaluate`. */
export interface BenchReadings {
  conditions: Record<string, CellValue>;
  rows: BenchRow[];
  limits: Limit[];
  traces: Record<string, Trace>;
}
