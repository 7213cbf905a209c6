import type { CellValue, FinishedReadings, RunningReadings } from '../../../shared-lib/method/method.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { loadTest, type StoredCell } from './tests.ts';

export interface FinishedTest extends FinishedReadings {
  testId: string;
  sampleId: string;
  sampleCode: string;
  startedSeq: number;
}

/** Finished tests by a method, with what was stored when they were finished. */
export function finishedTestsBy(store: NotebookStore, methodId: string): FinishedTest[] {
  return store
    .all<Omit<FinishedTest, 'results' | 'conditions'> & { results: string }>(
      `SELECT test.testId, test.sampleId, sample.code AS sampleCode, test.startedSeq, test.results, substr(test.finishedAt, 1, 10) AS finishedOn
       FROM test JOIN sample USING (sampleId)
       WHERE test.methodId = ? AND test.state = 'finished' AND test.results IS NOT NULL ORDER BY test.startedSeq`,
      [methodId],
    )
    .map((test) => ({
      ...test,
      results: JSON.parse(test.results) as FinishedReadings['results'],
      conditions: Object.fromEntries(
        store.all<Pick<Tables['condition'], 'key' | 'value'>>('SELECT key, value FROM condition WHERE testId = ?', [test.testId]).map(({ key, value }) => [key, value]),
      ),
    }));
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
