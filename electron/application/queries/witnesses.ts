import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { knownTo } from './merges.ts';

export type StoredWitness = Tables['witness'];

/** The signatures below exactly this page or a part of it, oldest first. */
export function witnessesOfPage(store: NotebookStore, { testId, by, fromSeq, toSeq }: Pick<StoredWitness, 'testId' | 'by' | 'fromSeq' | 'toSeq'>): StoredWitness[] {
  return store.all<StoredWitness>('SELECT * FROM witness WHERE testId IS ? AND "by" IS ? AND fromSeq >= ? AND toSeq <= ? ORDER BY seq', [testId, by, fromSeq, toSeq]);
}

/** The signatures below pages that hold an entry about the test, oldest first. */
export function witnessesOfTest(store: NotebookStore, testId: string): StoredWitness[] {
  return store.all<StoredWitness>(
    `SELECT * FROM witness WHERE testId = ?1
     UNION ALL SELECT * FROM witness WHERE testId IS NULL AND toSeq >= (SELECT startedSeq FROM test WHERE testId = ?1) AND EXISTS (
       SELECT 1 FROM entry_about JOIN entry USING (seq)
       WHERE entry_about.testId = ?1 AND seq BETWEEN witness.fromSeq AND witness.toSeq AND (witness."by" IS NULL OR entry."by" = witness."by")
     ) ORDER BY seq`,
    [testId],
  );
}

/** Entries about the test that were made after entry `seq`, or at another bench unknown to it; a signature below it changes nothing. */
export function entriesAfter(store: NotebookStore, testId: string, seq: number): number {
  const known = knownTo(store, seq);
  return store
    .all<{ seq: number }>(`SELECT seq FROM entry_about JOIN entry USING (seq) WHERE testId = ? AND kind <> 'work.witnessed'`, [testId])
    .filter((entry) => entry.seq > seq || !known(entry.seq)).length;
}

/** The signatures below pages that hold the entry, oldest first. */
export function witnessesOfEntry(store: NotebookStore, entry: { seq: number; by: string }, testId: string | null): StoredWitness[] {
  return store.all<StoredWitness>(
    `SELECT * FROM witness WHERE ?1 BETWEEN fromSeq AND toSeq AND (testId IS NULL OR testId = ?2) AND ("by" IS NULL OR "by" = ?3) ORDER BY seq`,
    [entry.seq, testId, entry.by],
  ).filter((witness) => knownTo(store, witness.seq)(entry.seq));
}
