import type { CalculationResult, ResultValue } from '../calculation/result.ts';
import type { RemovedArea } from '../picture/removed-area.ts';
import type { ReferenceColour } from './reference-colour.ts';

/** A test method: data from which the bench sheet, the help and the report section are built, plus its evaluation. */
export interface Method {
  id: string;
  /** Raised whenever what is read or its evaluation changes; a test keeps the version it was started with. A condition that may be left empty and enters no result raises nothing. */
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
  /** Its tests are seen beside earlier ones on the same product: they are handed to `evaluate` as `companions`. */
  companions?: boolean;
  /** What a finished test asks to be done, and by when. Pure: from what was stored of it alone. */
  followUp?: (test: FinishedReadings) => FollowUp[];
  /** What a running test waits for, and by when: the next reading of a programme that takes weeks. Pure. None where nothing was planned. */
  dueWhileRunning?: (test: RunningReadings) => DueReading[];
}

/** A method without its functions, which do not travel between application and screens. */
export type MethodData = Omit<Method, 'evaluate' | 'followUp' | 'dueWhileRunning'>;

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
  /** Methods by which a later test of the same sample settles it; that which asked is among them. */
  settledBy: string[];
}

/** What the next reading of a running test is worked out from. */
export interface RunningReadings {
  conditions: Record<string, CellValue>;
  /** Without the voided ones. */
  rows: BenchRow[];
  /** ISO 8601 date. */
  startedOn: string;
}

/** A reading that a running test waits for. */
export type DueReading = Omit<FollowUp, 'settledBy'>;

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
  /** Key of a condition: not asked for while that one names something of the notebook, which then says it. */
  unlessFrom?: string;
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
  /** Of a condition: filled in at the start of a test where the lot that the sample is made of says its day. */
  daysSince?: 'treatment';
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
  choices: { value: string; label: string; shortcut: string; /** A picture of what it stands for, an attachment of the notebook. */ pictureSha256?: string }[];
  default?: string;
  carryDown?: boolean;
}

/** A force–displacement trace read from a CSV file, kept as an attachment. */
export interface TraceField extends FieldBase {
  kind: 'trace';
}

/** A photograph in which an area is measured, kept as an attachment. Its value is the key into `photos`. */
export interface PhotoField extends FieldBase {
  kind: 'photo';
}

/** A reflectance spectrum, typed, pasted or read from a file. Its value is the text of `colour/spectrum-text.ts`. */
export interface SpectrumField extends FieldBase {
  kind: 'spectrum';
  /** Key of the text field of the same row that takes the name which the spectrum has in its file. */
  nameTo?: string;
}

/** Something of the notebook, chosen by its name. Its value is the id; of anything but a sample that is not kept there, the name as typed. */
export interface ItemField extends FieldBase {
  kind: 'item';
  of: (typeof itemsOfNotebook)[number];
}

export type Field = NumberField | TextField | ChoiceField | TraceField | PhotoField | SpectrumField | ItemField;

export interface ReadingSheet {
  /** 'position', 'specimen', 'exposure': names a row in lists and messages. */
  rowName: string;
  fields: Field[];
  /** Key of the field, a day, that says when a row was read. Left out: on the day on which it was entered. */
  readOn?: string;
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
  /**
   * What was read of the specimens themselves (the weakest, the worst), not an estimate for others: it has no interval, and
   * decides as it stands under either rule, as specifications for 'each specimen' mean it.
   */
  asRead?: true;
  /**
   * The high end of its bracket is what it did not reach: the fluid there retracted. So a lower limit at that end is not met.
   */
  belowHighEnd?: true;
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

/** What an item field can name. `fluid`: test fluids, tapes and standards. */
export const itemsOfNotebook = ['reference', 'sample', 'instrument', 'fluid'] as const;

export type CellValue = number | string | null;

/** A photograph and the area measured in it; without one, why it cannot be measured as it was set. */
export interface MeasuredPhoto {
  name: string;
  area: RemovedArea | null;
  problem: string;
}

/** One row as the evaluation sees it. Its index is that on the sheet; a row that is voided or incomplete is passed as a blank one. */
export interface BenchRow {
  /** Stable id of the row, `r1`, `r2` … */
  row: string;
  /** Sparse: what has not been entered is absent. A trace cell holds the key into `traces`, a photo cell that into `photos`. */
  values: Record<string, CellValue>;
}

/** The readings of one test, ready for `evaluate`. */
export interface BenchReadings {
  conditions: Record<string, CellValue>;
  rows: BenchRow[];
  limits: Limit[];
  traces: Record<string, Trace>;
  /** Areas measured in photographs, by the value of their cells. */
  photos?: Record<string, MeasuredPhoto>;
  /** The reference colours that conditions name, by id. */
  references?: Record<string, ReferenceColour>;
  companions?: Companions;
}

/** Tests by the same method that a test is seen beside. Absent where there is none. */
export interface Companions {
  /** The newest earlier test of the same product against the same reference that met its limits, or was approved. */
  approved?: Companion;
  /** The newest test of the sample that the condition `control` names. */
  control?: Companion;
}

export interface Companion {
  testId: string;
  sampleCode: string;
  /** ISO 8601 date: finished, or of a running test started. */
  on: string;
  conditions: Record<string, CellValue>;
  rows: BenchRow[];
}
