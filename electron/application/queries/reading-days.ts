import type { ReadingSheet } from '../../../shared-lib/method/method.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

interface StandingCell {
  row: string;
  key: string;
  corrections: number;
  /** ISO 8601 date: what the row itself says, else when the cell was entered last. */
  day: string;
  said: number;
}

/**
 * Days on which the readings of a test were taken that stand in it now, as ISO 8601, in order: the day that the row says where the
 * sheet asks for it, else that of the entry. Of a cell that was corrected each of its entries counts, for a slip put right after
 * the calibration was not read then; who reads anew voids the row. What is only named (text) was not read.
 */
export function readingDays(store: NotebookStore, testId: string, { fields, readOn }: ReadingSheet): string[] {
  const read = fields.filter(({ kind }) => kind !== 'text').map(({ key }) => key);
  const cells = store.all<StandingCell>(
    `SELECT reading."row", reading.key, reading.corrections, said.value IS NOT NULL AS said, coalesce(said.value, substr(entry.occurredAt, 1, 10)) AS day
     FROM reading JOIN bench_row USING (testId, "row") JOIN entry ON entry.seq = reading.seq
     LEFT JOIN reading AS said ON said.testId = reading.testId AND said."row" = reading."row" AND said.key = ?3
     WHERE reading.testId = ?1 AND reading.value IS NOT NULL AND bench_row.voided = 0 AND reading.key IN (SELECT value FROM json_each(?2))`,
    [testId, JSON.stringify(read), readOn ?? null],
  );
  const corrected = new Set(cells.filter(({ corrections, said }) => corrections > 0 && !said).map(({ row, key }) => `${row} ${key}`));
  const days = new Set([...cells.map(({ day }) => day), ...(corrected.size > 0 ? daysOfEntries(store, testId, corrected) : [])]);
  return [...days].sort();
}

/** @param cells each as 'r1 forceN' */
function daysOfEntries(store: NotebookStore, testId: string, cells: ReadonlySet<string>): string[] {
  return store
    .all<{ cell: string; day: string }>(
      `SELECT json_extract(body, '$.row') || ' ' || json_extract(body, '$.key') AS cell, substr(occurredAt, 1, 10) AS day
       FROM entry_about JOIN entry USING (seq) WHERE testId = ? AND json_extract(body, '$.row') IS NOT NULL AND json_extract(body, '$.key') IS NOT NULL`,
      [testId],
    )
    .flatMap(({ cell, day }) => (cells.has(cell) ? [day] : []));
}
