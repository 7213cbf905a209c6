import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import type { CellValue, Limit } from '../../../shared-lib/method/method.ts';
import type { PropertyVerdict, VerdictRule } from '../../../shared-lib/method/property-verdict.ts';
import type { PhotoReading } from '../../../shared-lib/notebook/attachment-entries.ts';
import type { TraceReading } from '../../../shared-lib/notebook/entry.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { TestState } from '../../../shared-lib/notebook/test-state.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { testsNamed } from './tests-named.ts';
import { groupBy } from './group-by.ts';
import { ofSamples } from './of-samples.ts';
import { Refusal } from '../refusal.ts';

export interface StoredCell {
  value: CellValue;
  /** '' also where the value was filled in from the row above or the method's default and nobody has typed it. */
  typed: string;
  corrections: number;
  /** Its last entry. */
  seq: number;
}

export interface StoredRow {
  row: string;
  cells: Record<string, StoredCell>;
  voided: { reason: string } | null;
  remark: string;
}

export interface StoredTrace {
  traceId: string;
  name: string;
  sha256: string;
  reading: TraceReading;
  points: number;
}

export interface StoredPhoto {
  photoId: string;
  name: string;
  sha256: string;
  planeSha256: string;
  reading: PhotoReading;
}

/** A test as it stands in the notebook. */
export interface StoredTest {
  testId: string;
  sampleId: string;
  methodId: string;
  methodVersion: string;
  rule: VerdictRule;
  state: TestState;
  startedAt: string;
  startedBy: string;
  startedSeq: number;
  limits: Limit[];
  conditions: Record<string, StoredCell>;
  /** By number; rows that nobody has written in are not here. */
  rows: StoredRow[];
  traces: StoredTrace[];
  photos: StoredPhoto[];
  remark: string;
  /** Why it was withdrawn; '' unless it was. */
  withdrawn: string;
  /** The entry by which it was finished last, `null` until then. */
  finishedSeq: number | null;
  finished: {
    at: string;
    by: string;
    calculation: string;
    calculationVersion: string;
    results: Record<string, ResultValue>;
    verdicts: PropertyVerdict[];
  } | null;
}

/** @throws Refusal when there is no such test */
export function loadTest(store: NotebookStore, testId: string): StoredTest {
  const test = store.one<Tables['test']>('SELECT * FROM test WHERE testId = ?', [testId]);
  if (!test) throw new Refusal('not-found', 'This test is not in the notebook.');
  const { sampleId, methodId, methodVersion, rule, state, startedAt, startedBy, startedSeq, finishedSeq, remark, withdrawn } = test;
  return {
    testId,
    sampleId,
    methodId,
    methodVersion,
    rule,
    state,
    startedAt,
    startedBy,
    startedSeq,
    limits: limitsOf(store, testId),
    conditions: conditionsOf(store, testId),
    rows: rowsOf(store, testId),
    traces: tracesOf(store, testId),
    photos: photosOf(store, testId),
    remark,
    withdrawn,
    finishedSeq,
    finished: finishedOf(test),
  };
}

/** Without the readings; `undefined` when there is no such test. */
export function stateOfTest(store: NotebookStore, testId: string): TestState | undefined {
  return store.one<Pick<Tables['test'], 'state'>>('SELECT state FROM test WHERE testId = ?', [testId])?.state;
}

/** In the order in which they were started, with the stored verdicts of those that are finished. */
export function testsOfSample(store: NotebookStore, sampleId: string): { testId: string; verdicts: PropertyVerdict[] | null }[] {
  return store
    .all<Pick<Tables['test'], 'testId' | 'state' | 'verdicts'>>(`SELECT testId, state, verdicts FROM test WHERE sampleId = ? AND withdrawn = '' ORDER BY startedSeq`, [sampleId])
    .map(({ testId, state, verdicts }) => ({
      testId,
      verdicts: state === 'finished' && verdicts !== null ? (JSON.parse(verdicts) as PropertyVerdict[]) : null,
    }));
}

/** Begun by mistake: it counts nowhere and takes nothing any more. */
export function isWithdrawn(store: NotebookStore, testId: string): boolean {
  return store.one(`SELECT 1 FROM test WHERE testId = ? AND withdrawn <> ''`, [testId]) !== undefined;
}

/** Most tests of a notebook are finished: those go by the index of their finish, the others by that of their state (`+` keeps SQLite from an index). */
const IN_STATE: Record<TestState | 'all', string> = {
  all: "withdrawn = '' ORDER BY coalesce(finishedSeq, startedSeq)",
  running: "state = 'running' AND withdrawn = '' ORDER BY startedSeq",
  outdated: "state = 'outdated' AND withdrawn = '' ORDER BY +finishedSeq",
  finished: "+state = 'finished' AND withdrawn = '' ORDER BY finishedSeq",
};

/** Newest first by what happened to them last: finished or started. @param words of sample or method; none finds all */
export function testIdsInState(store: NotebookStore, state: TestState | 'all', limit: number, words: readonly string[] = []): string[] {
  const { where, parameters } = testsNamed(store, words);
  return store.all<{ testId: string }>(`SELECT testId FROM test WHERE ${where} AND ${IN_STATE[state]} DESC LIMIT ?`, [...parameters, limit]).map(({ testId }) => testId);
}

/** Those of `testIds` that there are and that were not begun by mistake, in their order. */
export function knownTestIds(store: NotebookStore, testIds: readonly string[]): string[] {
  const known = new Set(store.all<{ testId: string }>("SELECT testId FROM test WHERE withdrawn = '' AND testId IN (SELECT value FROM json_each(?))", [JSON.stringify(testIds)]).map(({ testId }) => testId));
  return testIds.filter((testId) => known.has(testId));
}

export function countInState(store: NotebookStore, state: 'running' | 'outdated'): number {
  return store.one<{ tests: number }>("SELECT count(*) AS tests FROM test WHERE state = ? AND withdrawn = ''", [state])!.tests;
}

export interface UnfinishedTest {
  testId: string;
  methodId: string;
  methodVersion: string;
  state: 'running' | 'outdated';
  startedAt: string;
  sampleId: string;
  sampleCode: string;
}

/** Tests that run or are outdated. @param sampleIds `null`: of all samples */
export function unfinishedTests(store: NotebookStore, sampleIds: readonly string[] | null): UnfinishedTest[] {
  const { and, parameters } = ofSamples('test.sampleId', sampleIds);
  return store.all<UnfinishedTest>(
    `SELECT testId, methodId, methodVersion, state, startedAt, sampleId, sample.code AS sampleCode FROM test JOIN sample USING (sampleId)
     WHERE ${sampleIds ? '+' : ''}state IN ('running', 'outdated') AND withdrawn = '' ${and}`,
    parameters,
  );
}

/** Limits and rule of the last test by this method on this product: what the customer asks for seldom changes. */
export function lastLimits(store: NotebookStore, methodId: string, product: string): { limits: Limit[]; rule: VerdictRule; methodVersion: string } | null {
  const last = store.one<{ testId: string; rule: VerdictRule; methodVersion: string }>(
    `SELECT test.testId, test.rule, test.methodVersion FROM test JOIN sample USING (sampleId)
     WHERE test.methodId = ? AND sample.product = ? AND test.withdrawn = '' ORDER BY test.startedSeq DESC LIMIT 1`,
    [methodId, product],
  );
  return last ? { limits: limitsOf(store, last.testId), rule: last.rule, methodVersion: last.methodVersion } : null;
}

function limitsOf(store: NotebookStore, testId: string): Limit[] {
  return store.all<Limit>('SELECT property, lower, upper, source FROM test_limit WHERE testId = ? ORDER BY place', [testId]);
}

function conditionsOf(store: NotebookStore, testId: string): Record<string, StoredCell> {
  const cells = store.all<Tables['condition']>('SELECT * FROM condition WHERE testId = ?', [testId]);
  return Object.fromEntries(cells.map(({ key, value, typed, corrections, seq }) => [key, { value, typed, corrections, seq }]));
}

function rowsOf(store: NotebookStore, testId: string): StoredRow[] {
  const readings = groupBy(store.all<Tables['reading']>('SELECT * FROM reading WHERE testId = ?', [testId]), ({ row }) => row);
  return store
    .all<Tables['bench_row']>('SELECT * FROM bench_row WHERE testId = ?', [testId])
    .map(({ row, voided, voidReason, remark }) => ({
      row,
      cells: Object.fromEntries(
        (readings.get(row) ?? []).map(({ key, value, typed, corrections, seq }) => [key, { value, typed, corrections, seq }]),
      ),
      voided: voided ? { reason: voidReason } : null,
      remark,
    }))
    .sort((a, b) => Number(a.row.slice(1)) - Number(b.row.slice(1)));
}

function tracesOf(store: NotebookStore, testId: string): StoredTrace[] {
  return store
    .all<Omit<StoredTrace, 'reading'> & { reading: string }>(
      `SELECT trace.traceId, attachment.name, trace.sha256, trace.reading, trace.points
       FROM trace JOIN attachment USING (sha256) WHERE trace.testId = ? ORDER BY trace.seq`,
      [testId],
    )
    .map((trace) => ({ ...trace, reading: JSON.parse(trace.reading) as TraceReading }));
}

function photosOf(store: NotebookStore, testId: string): StoredPhoto[] {
  return store
    .all<Omit<StoredPhoto, 'reading'> & { reading: string }>(
      `SELECT photo.photoId, attachment.name, photo.sha256, photo.planeSha256, photo.reading
       FROM photo JOIN attachment USING (sha256) WHERE photo.testId = ? ORDER BY photo.seq`,
      [testId],
    )
    .map((photo) => ({ ...photo, reading: JSON.parse(photo.reading) as PhotoReading }));
}

function finishedOf(test: Tables['test']): StoredTest['finished'] {
  if (test.results === null || test.verdicts === null) return null;
  return {
    at: test.finishedAt ?? '',
    by: test.finishedBy ?? '',
    calculation: test.calculation ?? '',
    calculationVersion: test.calculationVersion ?? '',
    results: JSON.parse(test.results) as Record<string, ResultValue>,
    verdicts: JSON.parse(test.verdicts) as PropertyVerdict[],
  };
}
