import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import { searchWords } from '../../../shared-lib/notebook/project.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { likePattern } from './like-pattern.ts';

export interface FoundEntry {
  entry: Entry;
  testId: string | null;
  sampleId: string | null;
}

/** '' looks for anything. */
export interface EntrySearch {
  /** Words, each found in what the entry says or in the code or product of the sample that it concerns. */
  search: string;
  kind: string;
  by: string;
  testId: string;
}

const FROM = `FROM entry JOIN entry_about USING (seq)
  LEFT JOIN test ON test.testId = entry_about.testId
  LEFT JOIN sample ON sample.sampleId = coalesce(entry_about.sampleId, test.sampleId)`;
const MATCHES = `(?1 = '' OR entry.kind = ?1) AND (?2 = '' OR entry."by" = ?2) AND (?3 = '' OR entry_about.testId = ?3)`;
const SAYS = String.raw`(entry_about.words || ' ' || coalesce(sample.code || ' ' || sample.product, '')) LIKE ? ESCAPE '\'`;

/** Newest first. */
export function findEntries(store: NotebookStore, search: EntrySearch, limit: number, offset: number): FoundEntry[] {
  const { where, parameters } = matching(search);
  return store
    .all<{ seq: number; testId: string | null; sampleId: string | null }>(
      `SELECT seq, entry_about.testId, sample.sampleId ${FROM} WHERE ${where} ORDER BY seq DESC LIMIT ? OFFSET ?`,
      [...parameters, limit, offset],
    )
    .flatMap(({ seq, testId, sampleId }) => [...store.entries(seq, seq)].map((entry) => ({ entry, testId, sampleId })));
}

export function countEntries(store: NotebookStore, search: EntrySearch): number {
  const { where, parameters } = matching(search);
  return store.one<{ total: number }>(`SELECT count(*) AS total ${FROM} WHERE ${where}`, parameters)?.total ?? 0;
}

/** In the order in which they were made. */
export function entriesOfTest(store: NotebookStore, testId: string): Entry[] {
  return store
    .all<{ seq: number }>('SELECT seq FROM entry_about WHERE testId = ? ORDER BY seq', [testId])
    .flatMap(({ seq }) => [...store.entries(seq, seq)]);
}

function matching({ search, kind, by, testId }: EntrySearch): { where: string; parameters: string[] } {
  const words = searchWords(search).split(/\s+/).filter(Boolean);
  return { where: [MATCHES, ...words.map(() => SAYS)].join(' AND '), parameters: [kind, by, testId, ...words.map(likePattern)] };
}
