import type { CellValue } from '../method/method.ts';
import type { ApprovalTables } from './approval-tables.ts';
import type { AttachmentTables } from './attachment-tables.ts';
import type { ColourTables } from './colour-tables.ts';
import type { EquipmentTables } from './equipment-tables.ts';
import type { InHouseTables } from './in-house-tables.ts';
import type { MaterialTables } from './material-tables.ts';
import type { MergeTables } from './merge-tables.ts';
import type { NotebookTables } from './notebook-tables.ts';
import type { PersonTables } from './person-tables.ts';
import type { PlanTables } from './plan-tables.ts';
import type { SampleTables } from './sample-tables.ts';
import type { TestState } from './test-state.ts';
import type { TrialTables } from './trial-tables.ts';
import type { WitnessTables } from './witness-tables.ts';

/**
 * The tables that are made from the entries, row by row as SQLite gives them. Column names are the field names of the
 * entries. Nothing here is typed in by hand: `project` says what each entry does to them, and they can be remade.
 */
export interface Tables
  extends NotebookTables,
    PersonTables,
    MaterialTables,
    SampleTables,
    EquipmentTables,
    AttachmentTables,
    ColourTables,
    InHouseTables,
    TrialTables,
    PlanTables,
    ApprovalTables,
    WitnessTables,
    MergeTables {
  test: {
    testId: string;
    sampleId: string;
    methodId: string;
    methodVersion: string;
    rule: 'simple' | 'guarded';
    state: TestState;
    startedAt: string;
    startedBy: string;
    startedSeq: number;
    /** The rest is `null` or '' until the test is finished; `outdated` keeps the last result. */
    finishedAt: string | null;
    finishedBy: string | null;
    finishedSeq: number | null;
    calculation: string | null;
    calculationVersion: string | null;
    /** JSON: `Record<string, ResultValue>`. */
    results: string | null;
    /** JSON: `PropertyVerdict[]`. */
    verdicts: string | null;
    remark: string;
    /** Why it was withdrawn; '' unless it was. */
    withdrawn: string;
  };
  test_limit: { testId: string; property: string; lower: number | null; upper: number | null; source: string; place: number };
  condition: { testId: string; key: string; value: CellValue; typed: string; corrections: number; seq: number };
  bench_row: { testId: string; row: string; voided: 0 | 1; voidReason: string; remark: string };
  reading: { testId: string; row: string; key: string; value: CellValue; typed: string; corrections: number; seq: number };
  trace: {
    traceId: string;
    testId: string;
    row: string;
    key: string;
    sha256: string;
    /** JSON: `TraceReading`. */
    reading: string;
    points: number;
    seq: number;
  };
  report: {
    reportId: string;
    number: string;
    title: string;
    recipient: string;
    remark: string;
    contentSha256: string;
    pdfSha256: string;
    issuedAt: string;
    issuedBy: string;
    issuedSeq: number;
    replaces: string | null;
    replacesReason: string;
    replacedBy: string | null;
  };
  report_test: { reportId: string; testId: string; place: number };
  /** What an entry speaks of: its test or sample. */
  entry_about: { seq: number; testId: string | null; sampleId: string | null };
  /** What else an entry speaks of, by its id. */
  entry_mention: { thing: string; seq: number };
}

export type TableName = keyof Tables;

/** Key columns of each table, in the order in which the tables may be filled (what is referred to comes first). */
export const tableKeys = {
  notebook: ['one'],
  notebook_heading: ['createdAt'],
  person: ['personId'],
  material: ['materialId'],
  lot: ['lotId'],
  lot_part: ['lotId', 'partId'],
  sample: ['sampleId'],
  sample_lot: ['sampleId', 'lotId'],
  instrument: ['instrumentId'],
  calibration: ['calibrationId'],
  fluid: ['fluidId'],
  attachment: ['sha256'],
  test: ['testId'],
  test_limit: ['testId', 'property'],
  condition: ['testId', 'key'],
  bench_row: ['testId', 'row'],
  reading: ['testId', 'row', 'key'],
  trace: ['traceId'],
  report: ['reportId'],
  report_test: ['reportId', 'testId'],
  trial_set: ['trialSetId'],
  trial: ['trialId'],
  trial_sample: ['trialId', 'sampleId'],
  habit: ['methodId'],
  in_house_method: ['methodId'],
  in_house_version: ['methodId', 'version'],
  study: ['studyId'],
  attachment_link: ['attachedTo', 'attachedId', 'sha256'],
  photo: ['photoId'],
  reference_colour: ['referenceId'],
  reference_tolerance: ['referenceId', 'customer'],
  spectrum_file: ['testId', 'row', 'key'],
  passphrase: ['personId'],
  signing_refused: ['personId'],
  witness: ['seq'],
  plan: ['planId'],
  plan_version: ['planId', 'version'],
  followed_plan: ['sampleId'],
  planned_test: ['testId'],
  approval: ['approvalId'],
  approval_lot: ['approvalId', 'lotId'],
  approval_sample: ['approvalId', 'sampleId'],
  approval_link: ['approvalId', 'lineId', 'testId'],
  approval_line: ['approvalId', 'lineId'],
  merge: ['mergeId'],
  merge_run: ['firstSeq'],
  merge_conflict: ['mergeId', 'here', 'there'],
  entry_mention: ['thing', 'seq'],
  entry_about: ['seq'],
} as const satisfies { [Name in TableName]: readonly (keyof Tables[Name])[] };

export const tableNames = Object.keys(tableKeys) as TableName[];

/**
 * One thing that an entry does to one table.
 * - `insert`: a new row; a row with that key is an error.
 * - `put`: a new row, or the named columns of the row with that key. Columns in `add` are counted up instead.
 * - `set`: the named columns of every row that matches `where`; none may.
 * - `remove`: every row that matches `where`.
 */
export type TableChange = { [Name in TableName]: ChangeOf<Name> }[TableName];

export type ChangeOf<Name extends TableName> =
  | { change: 'insert'; table: Name; row: Tables[Name] }
  | { change: 'put'; table: Name; row: Partial<Tables[Name]>; add: Partial<Tables[Name]> }
  | { change: 'set'; table: Name; where: Partial<Tables[Name]>; values: Partial<Tables[Name]> }
  | { change: 'remove'; table: Name; where: Partial<Tables[Name]> };
