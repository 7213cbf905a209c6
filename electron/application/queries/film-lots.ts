import type { NotebookStore } from '../../store/notebook-store.ts';

export interface TestedLot {
  material: string;
  code: string;
  /** Of the lot's latest finished test by the method, and the sample it was made on. */
  testedAt: string;
  sampleId: string;
}

/** Film lots in use that were tested by `methodId`. */
export function lastTestsOfFilmLots(store: NotebookStore, methodId: string): TestedLot[] {
  // SQLite takes the bare columns from the row that holds the maximum.
  return store.all<TestedLot>(
    `SELECT material.name AS material, lot.code, max(test.finishedAt) AS testedAt, sample_lot.sampleId
     FROM lot JOIN material USING (materialId) JOIN sample_lot USING (lotId) JOIN test ON test.sampleId = sample_lot.sampleId
     WHERE material.kind = 'film' AND lot.retiredAt IS NULL AND test.methodId = ? AND test.finishedAt IS NOT NULL
     GROUP BY lot.lotId`,
    [methodId],
  );
}

/** The different days on which the lots that a sample is made of were treated. */
export function treatmentDaysOf(store: NotebookStore, sampleId: string): string[] {
  return store
    .all<{ treatedOn: string }>('SELECT DISTINCT treatedOn FROM sample_lot JOIN lot USING (lotId) WHERE sampleId = ? AND treatedOn IS NOT NULL', [sampleId])
    .map(({ treatedOn }) => treatedOn);
}
