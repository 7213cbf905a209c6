import type { CellValue, FinishedReadings, RunningReadings } from '../../../shared-lib/method/method.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { ofSamples } from './of-samples.ts';
import { loadTest, type StoredCell } from './tests.ts';

export interface FinishedTest {
  testId: string;
  sampleId: string;
  sampleCode: string;
  startedSeq: number;
}

/** Finished tests by a method on samples that are kept, each the last that was begun by it on its sample. @param sampleIds `null`: all */
export function lastFinishedTestsBy(store: NotebookStore, methodId: string, sampleIds: readonly string[] | null): FinishedTest[] {
  const { and, parameters } = ofSamples('test.sampleId', sampleIds);
  return store.all<FinishedTest>(
    `SELECT test.testId, test.sampleId, sample.code AS sampleCode, test.startedSeq FROM test JOIN sample USING (sampleId)
     WHERE test.methodId = ? AND test.state = 'finished' AND test.results IS NOT NULL AND sample.retiredAt IS NULL ${and}
       AND NOT EXISTS (SELECT 1 FROM test AS later WHERE later.methodId = test.methodId AND later.sampleId = test.sampleId AND later.startedSeq > test.startedSeq AND later.withdrawn = '')`,
    [methodId, ...parameters],
  );
}

/** What was stored of a finished test. */
export function finishedReadings(store: NotebookStore, testId: string): FinishedReadings {
  const { results, finishedOn } = store.one<{ results: string; finishedOn: string }>('SELECT results, substr(finishedAt, 1, 10) AS finishedOn FROM test WHERE testId = ?', [testId])!;
  const conditions = store.all<Pick<Tables['condition'], 'key' | 'value'>>('SELECT key, value FROM condition WHERE testId = ?', [testId]);
  return { results: JSON.parse(results) as FinishedReadings['results'], conditions: Object.fromEntries(conditions.map(({ key, value }) => [key, value])), finishedOn };
}

/** Whether a test by one of the methods was started on the sample after entry `seq`. */
export function isTestedAfter(store: NotebookStore, sampleId: string, methodIds: readonly string[], seq: number): boolean {
  const places = methodIds.map(() => '?').join(', ');
  return store.one(`SELECT 1 FROM test WHERE sampleId = ? AND withdrawn = '' AND startedSeq > ? AND methodId IN (${places})`, [sampleId, seq, ...methodIds]) !== undefined;
}

/** Conditions and rows of a test as they stand, without the rows that were voided. */
export function runningReadings(store: NotebookStore, testId: string): Omit<RunningReadings, 'startedOn'> {
  const { conditions, rows } = loadTest(store, testId);
  return {
    conditions: valuesOf(conditions),
    rows: rows.filter(({ voided }) => voided === null).map(({ row, cells }) => ({ row, values: valuesOf(cells) })),
  };
}

function valuesOf(cells: Record<string, StoredCell>): Record<string, CellValue> {
  return Object.fromEntries(Object.entries(cells).map(([key, { value }]) => [key, value]));
}
