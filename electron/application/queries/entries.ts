import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { likePattern } from './like-pattern.ts';
import { methodsNamed } from './methods-named.ts';
import { NAMED_THINGS } from './named-things.ts';
import { wordsQuery } from './words-query.ts';

export interface FoundEntry {
  entry: Entry;
  testId: string | null;
  sampleId: string | null;
}

/** '' looks for anything. */
export interface EntrySearch {
  /** Words, each the beginning of one in what the entry says, or found in the name that a thing goes by now which it speaks of. */
  search: string;
  kind: string;
  by: string;
  testId: string;
  /** Recorded at this instant or later, ISO 8601 in UTC. */
  from: string;
  /** Recorded before this instant. */
  until: string;
}

/** Above this many, nobody needs to know how many more there are. */
const MOST_COUNTED = 10_000;
/** The newest entries are searched first, then ever more of the older ones, until there are enough. */
const FIRST_SPAN = 20_000;
const WIDER = 8;

/** Places in the record, both included. */
interface Span {
  lowest: number;
  highest: number;
}

const SAYS = 'seq IN (SELECT docid FROM entry_words WHERE words MATCH ? AND docid > ?1)';
/** A line of an approval names the test that fills it, and so its sample; the lines are few, so they come first. */
const CONCERNS = String.raw`seq IN (
  WITH named AS MATERIALIZED (SELECT id FROM (${NAMED_THINGS}) WHERE name LIKE ? ESCAPE '\' UNION ALL SELECT value FROM json_each(?))
  SELECT seq FROM entry_about WHERE sampleId IN named AND seq > ?1
  UNION ALL SELECT entry_about.seq FROM test JOIN entry_about USING (testId) WHERE test.sampleId IN named AND entry_about.seq > ?1
  UNION ALL SELECT seq FROM entry_mention WHERE thing IN named AND seq > ?1
  UNION ALL SELECT entry_mention.seq FROM approval_line CROSS JOIN test USING (testId) JOIN entry_mention ON thing = testId WHERE test.sampleId IN named AND entry_mention.seq > ?1)`;

/** Newest first. */
export function findEntries(store: NotebookStore, search: EntrySearch, limit: number, offset: number): FoundEntry[] {
  const { where, parameters } = matching(store, search);
  const span = spanOf(store, search);
  for (const floor of floors(span)) {
    const found = store.all<{ seq: number; testId: string | null; sampleId: string | null }>(
      `SELECT found.seq, entry_about.testId, coalesce(entry_about.sampleId, test.sampleId) AS sampleId
       FROM (SELECT seq FROM entry WHERE ${where} ORDER BY seq DESC LIMIT ? OFFSET ?) AS found
       JOIN entry_about USING (seq) LEFT JOIN test USING (testId) ORDER BY found.seq DESC`,
      [floor, span.highest, ...parameters, limit, offset],
    );
    if (found.length === limit || floor < span.lowest) {
      return found.flatMap(({ seq, testId, sampleId }) => [...store.entries(seq, seq)].map((entry) => ({ entry, testId, sampleId })));
    }
  }
  return [];
}

/** How many there are, or `most` and `many` when there are more. */
export function countEntries(store: NotebookStore, search: EntrySearch, most = MOST_COUNTED): { total: number; many: boolean } {
  const wanted = [search.search.trim(), search.kind, search.by, search.testId, search.from, search.until];
  if (wanted.every((text) => text === '')) return { total: store.entryCount, many: false };
  const { where, parameters } = matching(store, search);
  const span = spanOf(store, search);
  let total = 0;
  for (const floor of floors(span)) {
    total = store.one<{ total: number }>(`SELECT count(*) AS total FROM (SELECT 1 FROM entry WHERE ${where} LIMIT ?)`, [floor, span.highest, ...parameters, most + 1])!.total;
    if (total > most) return { total: most, many: true };
  }
  return { total, many: false };
}

/** In the order in which they were made. */
export function entriesOfTest(store: NotebookStore, testId: string): Entry[] {
  return store
    .all<{ seq: number }>('SELECT seq FROM entry_about WHERE testId = ? ORDER BY seq', [testId])
    .flatMap(({ seq }) => [...store.entries(seq, seq)]);
}

/** Where entries of the time asked for can stand; those of another bench stand where they were brought in. */
function spanOf(store: NotebookStore, { from, until }: EntrySearch): Span {
  if (from === '' && until === '') return { lowest: 1, highest: store.entryCount };
  const { lowest, highest } = store.one<{ lowest: number | null; highest: number | null }>(
    `SELECT min(seq) AS lowest, max(seq) AS highest FROM entry WHERE ${[...asked('recordedAt >= ?', from), ...asked('recordedAt < ?', until)].map(([condition]) => condition).join(' AND ')}`,
    [from, until].filter(Boolean),
  )!;
  return { lowest: lowest ?? 1, highest: highest ?? 0 };
}

/** The entries above each are looked through in turn; the last is below them all. */
function* floors({ lowest, highest }: Span): Generator<number> {
  for (let span = FIRST_SPAN; highest - span >= lowest; span *= WIDER) yield highest - span;
  yield lowest - 1;
}

/** Only what is asked for becomes a condition, so that each can use its index. `?1` is the floor, `?2` the highest place. */
function matching(store: NotebookStore, { search, kind, by, testId, from, until }: EntrySearch): { where: string; parameters: string[] } {
  const conditions: [condition: string, ...parameters: string[]][] = [
    ['seq > ?1 AND seq <= ?2'],
    ...asked('kind = ?', kind),
    ...asked('"by" = ?', by),
    ...asked('seq IN (SELECT seq FROM entry_about WHERE testId = ?)', testId),
    // `+`: what the places leave over is read in their order, not by its time and sorted then.
    ...asked('+recordedAt >= ?', from),
    ...asked('+recordedAt < ?', until),
    ...search.split(/\s+/).filter(Boolean).map((word) => saying(store, word)),
  ];
  return { where: conditions.map(([condition]) => condition).join(' AND '), parameters: conditions.flatMap(([, ...parameters]) => parameters) };
}

function asked(condition: string, wanted: string): [string, string][] {
  return wanted === '' ? [] : [[condition, wanted]];
}

function saying(store: NotebookStore, word: string): [condition: string, ...parameters: string[]] {
  const query = wordsQuery(word);
  const concerned = [likePattern(word), JSON.stringify(methodsNamed(store, word))];
  return query === '' ? [CONCERNS, ...concerned] : [`(${SAYS} OR ${CONCERNS})`, query, ...concerned];
}
