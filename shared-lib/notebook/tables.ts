import type { BlockingState } from '../approval/line-state.ts';
import type { FluidKind } from './equipment-entries.ts';
import type { LotDetails } from './material-entries.ts';
import type { AttachedTo } from './attachment-entries.ts';
import type { DifferenceFormula } from '../colour/difference-formulas.ts';
import type { ReferenceColour } from '../method/reference-colour.ts';
import type { MaterialKind } from './entry.ts';
import type { TestState } from './test-state.ts';
import type { CellValue } from '../method/method.ts';

/**
 * The tables that are made from the entries, row by row as SQLite gives them. Column names are the field names of the
 * entries. Nothing here is typed in by hand: `project` says what each entry does to them, and they can be remade.
 */
export interface Tables {
  notebook: { one: 1; title: string; laboratory: string; createdAt: string };
  person: { personId: string; name: string; initials: string; role: string; retired: 0 | 1; retiredReason: string; addedSeq: number };
  passphrase: { personId: string; N: number; r: number; p: number; /** Hex. */ salt: string; /** Hex. */ hash: string; setAt: string };
  /** Wrong passphrases since the last right one. */
  signing_refused: { personId: string; times: number; lastAt: string };
  material: { materialId: string; kind: MaterialKind; name: string; supplier: string; description: string; /** JSON: `Layer[]`. */ layers: string; addedSeq: number };
  lot: LotDetails & {
    lotId: string;
    materialId: string;
    code: string;
    receivedOn: string | null;
    note: string;
    retiredAt: string | null;
    retiredReason: string;
    addedSeq: number;
  };
  /** What went into a lot. */
  lot_part: { lotId: string; partId: string; place: number };
  sample: {
    sampleId: string;
    code: string;
    product: string;
    job: string;
    roll: string;
    note: string;
    customer: string;
    acrossMm: number | null;
    alongM: number | null;
    keptAt: string;
    retainedUntil: string | null;
    retiredAt: string | null;
    retiredReason: string;
    addedAt: string;
    addedBy: string;
    addedSeq: number;
  };
  sample_lot: { sampleId: string; lotId: string; place: number };
  instrument: { instrumentId: string; name: string; serial: string; /** JSON: ids. */ methodIds: string; note: string; retiredAt: string | null; retiredReason: string; addedSeq: number };
  calibration: { calibrationId: string; instrumentId: string; calibratedOn: string; dueOn: string | null; remark: string; enteredBy: string; seq: number };
  fluid: {
    fluidId: string;
    kind: FluidKind;
    name: string;
    lot: string;
    /** JSON: ids. */
    methodIds: string;
    openedOn: string | null;
    expiresOn: string | null;
    note: string;
    retiredAt: string | null;
    retiredReason: string;
    addedSeq: number;
  };
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
  attachment: { sha256: string; name: string; mediaType: string; size: number; addedSeq: number };
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
  trial_set: {
    trialSetId: string;
    title: string;
    question: string;
    product: string;
    /** JSON: `Response[]`. */
    responses: string;
    /** JSON: `Factor[]`. */
    factors: string;
    addedAt: string;
    addedBy: string;
    addedSeq: number;
  };
  trial: {
    trialId: string;
    trialSetId: string;
    name: string;
    control: 0 | 1;
    /** JSON: `Component[]`. */
    components: string;
    /** JSON: `Record<string, number>`. */
    factors: string;
    note: string;
    addedSeq: number;
  };
  trial_sample: { trialId: string; sampleId: string; seq: number };
  habit: { methodId: string; title: string; /** JSON: `Habit`. */ habit: string; describedAt: string; describedBy: string; seq: number };
  in_house_method: { methodId: string; /** That new tests take. */ version: string; title: string; retired: 0 | 1; retiredReason: string; addedSeq: number };
  in_house_version: {
    methodId: string;
    version: string;
    /** JSON: `WrittenMethod`. */
    written: string;
    /** JSON: `MethodOrigin`. */
    origin: string | null;
    /** JSON: sentences. */
    changes: string;
    reason: string;
    writtenAt: string;
    writtenBy: string;
    seq: number;
  };
  study: {
    studyId: string;
    methodId: string;
    /** Of an in-house method: the version it was made by; '' of a built-in one. */
    methodVersion: string;
    property: string;
    kind: 'number' | 'grade';
    /** JSON: `StudyReading[]`. */
    readings: string;
    calculationVersion: string;
    /** JSON: `Record<string, ResultValue>`. */
    results: string;
    remark: string;
    recordedAt: string;
    recordedBy: string;
    seq: number;
  };
  attachment_link: {
    attachedTo: AttachedTo;
    attachedId: string;
    sha256: string;
    caption: string;
    linkedAt: string;
    linkedBy: string;
    seq: number;
  };
  photo: {
    photoId: string;
    testId: string;
    row: string;
    key: string;
    sha256: string;
    planeSha256: string;
    /** JSON: `PhotoReading`. */
    reading: string;
    seq: number;
  };
  reference_colour: {
    referenceId: string;
    name: string;
    spectrum: string | null;
    L: number | null;
    a: number | null;
    b: number | null;
    illuminant: ReferenceColour['illuminant'];
    observer: 2 | 10;
    condition: ReferenceColour['condition'];
    geometry: ReferenceColour['geometry'];
    note: string;
    /** JSON: the file of its spectrum. */
    file: string | null;
    replacedBy: string | null;
    addedAt: string;
    addedBy: string;
    addedSeq: number;
  };
  reference_tolerance: {
    referenceId: string;
    customer: string;
    formula: DifferenceFormula;
    limit: number;
    cmcL: number;
    cmcC: number;
    deltaL: number | null;
    deltaC: number | null;
    deltaH: number | null;
    seq: number;
  };
  /** The file that the spectrum of a cell came from, as JSON; it holds while `seq` is the last entry of the cell. */
  spectrum_file: { testId: string; row: string; key: string; file: string; seq: number };
  plan: { planId: string; /** That samples take from now on. */ version: string; title: string; product: string; retired: 0 | 1; retiredReason: string; addedSeq: number };
  plan_version: {
    planId: string;
    version: string;
    /** JSON: `PlanContent`. */
    content: string;
    /** JSON: sentences. */
    changes: string;
    reason: string;
    writtenAt: string;
    writtenBy: string;
    seq: number;
  };
  followed_plan: {
    sampleId: string;
    planId: string;
    version: string;
    printedAt: string | null;
    laminatedAt: string | null;
    followedAt: string;
    followedBy: string;
    seq: number;
  };
  /** The line of its sample's plan that a test was made for. */
  planned_test: { testId: string; sampleId: string; planId: string; lineId: string; replicates: number; seq: number };
  /** What follows the draft is `null` or '' until it is signed, withdrawn or replaced. */
  approval: {
    approvalId: string;
    planId: string;
    version: string;
    product: string;
    job: string;
    customer: string;
    pressRun: string;
    note: string;
    replaces: string | null;
    replacesReason: string;
    draftedAt: string;
    draftedBy: string;
    draftedSeq: number;
    contentSha256: string | null;
    pdfSha256: string | null;
    signedMeaning: string;
    signedBy: string | null;
    signedAt: string | null;
    signedSeq: number | null;
    withdrawnReason: string;
    withdrawnBy: string | null;
    withdrawnAt: string | null;
    withdrawnSeq: number | null;
    replacedBy: string | null;
    replacedSeq: number | null;
  };
  approval_lot: { approvalId: string; lotId: string; place: number };
  /** What fills a line of an approval: a linked result or an observation, and a waiver. A line of the plan has no row before. */
  approval_line: {
    approvalId: string;
    lineId: string;
    /** '' for a line of the plan. */
    title: string;
    /** 0 for a line of the plan. */
    addedSeq: number;
    testId: string | null;
    finishedId: string | null;
    linkedBy: string | null;
    linkedAt: string | null;
    inOrder: 0 | 1 | null;
    remark: string;
    observedBy: string | null;
    observedAt: string | null;
    waivedOf: BlockingState | null;
    waiverReason: string;
    waivedBy: string | null;
    waivedAt: string | null;
  };
  witness: {
    seq: number;
    testId: string | null;
    by: string | null;
    fromSeq: number;
    toSeq: number;
    chainHash: string;
    personId: string;
    meaning: string;
    at: string;
  };
  /** Other notebooks that were brought in. */
  merge: { mergeId: string; bench: string; title: string; laboratory: string; count: number; mergedAt: string; mergedBy: string; seq: number };
  /** Entries of one bench that were brought in together; `forkSeq`: the last entry here that they follow, 0 for none. */
  merge_run: { firstSeq: number; lastSeq: number; forkSeq: number; bench: string };
  /** Two entries of two benches that do not go together, and the code that one of them goes by since; `settledReason`: why what was taken stands. */
  merge_conflict: {
    mergeId: string;
    here: string;
    there: string;
    taken: 'here' | 'there' | 'both';
    mark: string | null;
    settledReason: string | null;
    settledAt: string | null;
    settledBy: string | null;
  };
  /** What an entry speaks of: its test or sample. */
  entry_about: { seq: number; testId: string | null; sampleId: string | null };
}

export type TableName = keyof Tables;

/** Key columns of each table, in the order in which the tables may be filled (what is referred to comes first). */
export const tableKeys = {
  notebook: ['one'],
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
  approval_line: ['approvalId', 'lineId'],
  merge: ['mergeId'],
  merge_run: ['firstSeq'],
  merge_conflict: ['mergeId', 'here', 'there'],
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
