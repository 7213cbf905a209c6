import type { PageWanted } from '../../../shared-lib/witness-calls.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import type { FoundEntry } from './entries.ts';

/** What narrows a page of work beside the numbers of its entries. */
export interface PageScope {
  testId: string | null;
  by: string | null;
}

export function scopeOf(page: PageWanted): PageScope {
  return { testId: 'testId' in page ? page.testId : null, by: 'by' in page ? page.by : null };
}

/** The entries of a page in the order in which they were made, at most `most` and one more. Signatures of witnesses are none of the work. */
export function entriesOfPage(store: NotebookStore, page: PageWanted, most: number): FoundEntry[] {
  const [where, parameters] =
    'testId' in page ? ['entry_about.testId = ?', [page.testId]]
    : 'by' in page ? ['entry."by" = ? AND entry.recordedAt >= ? AND entry.recordedAt < ?', [page.by, page.from, page.to]]
    : ['entry.seq BETWEEN ? AND ?', [page.fromSeq, page.toSeq]];
  return store
    .all<{ seq: number; testId: string | null; sampleId: string | null }>(
      `SELECT entry.seq, entry_about.testId, coalesce(entry_about.sampleId, test.sampleId) AS sampleId
       FROM entry JOIN entry_about USING (seq) LEFT JOIN test ON test.testId = entry_about.testId
       WHERE ${where} AND entry.kind NOT IN ('work.witnessed', 'signing.refused') ORDER BY entry.seq LIMIT ?`,
      [...parameters, most + 1],
    )
    .flatMap(({ seq, testId, sampleId }) => [...store.entries(seq, seq)].map((entry) => ({ entry, testId, sampleId })));
}
