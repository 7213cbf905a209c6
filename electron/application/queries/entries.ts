import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { searchWords } from '../../../shared-lib/notebook/project.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';

export interface FoundEntry {
  entry: Entry;
  testId: string | null;
  sampleId: string | null;
}

/** '' looks for anything. */
export interface EntrySearch {
  search: string;
  kind: string;
  by: string;
  testId: string;
}

const FROM = 'FROM entry JOIN entry_about USING (seq)';
const MATCHES = `(?1 = '' OR instr(entry_about.words, ?1) > 0) AND (?2 = '' OR entry.kind = ?2)
  AND (?3 = '' OR entry."by" = ?3) AND (?4 = '' OR entry_about.testId = ?4)`;

/** Newest first. */
export function findEntries(store: NotebookStore, search: EntrySearch, limit: number, offset: number): FoundEntry[] {
  return store
    .all<{ seq: number; testId: string | null; sampleId: string | null }>(
      `SELECT seq, entry_about.testId, coalesce(entry_about.sampleId, test.sampleId) AS sampleId
       ${FROM} LEFT JOIN test ON test.testId = entry_about.testId WHERE ${MATCHES} ORDER BY seq DESC LIMIT ?5 OFFSET ?6`,
      [...parameters(search), limit, offset],
    )
    .flatMap(({ seq, testId, sampleId }) => [...store.entries(seq, seq)].map((entry) => ({ entry, testId, sampleId })));
}

export function countEntries(store: NotebookStore, search: EntrySearch): number {
  return store.one<{ total: number }>(`SELECT count(*) AS total ${FROM} WHERE ${MATCHES}`, parameters(search))?.total ?? 0;
}

/** In the order in which they were made. */
export function entriesOfTest(store: NotebookStore, testId: string): Entry[] {
  return store
    .all<{ seq: number }>('SELECT seq FROM entry_about WHERE testId = ? ORDER BY seq', [testId])
    .flatMap(({ seq }) => [...store.entries(seq, seq)]);
}

function parameters({ search, kind, by, testId }: EntrySearch): string[] {
  return [searchWords(search), kind, by, testId];
}
