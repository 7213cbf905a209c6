import type { NotebookStore } from '../../store/notebook-store.ts';

/** An entry, with what it is about. */
export interface Change {
  kind: string;
  testId: string | null;
  methodId: string | null;
  sampleId: string | null;
}

/** More entries than this, and looking at everything is no more work. */
const MANY = 500;

/** What came into the record after entry `seq`; `null`: too much, or another notebook, so that anything may have changed. */
export function changesSince(store: NotebookStore, seq: number): Change[] | null {
  if (store.entryCount - seq > MANY) return null;
  const changes = store.all<Change>(
    `SELECT entry.kind, entry_about.testId, test.methodId, coalesce(entry_about.sampleId, test.sampleId) AS sampleId
     FROM entry JOIN entry_about USING (seq) LEFT JOIN test USING (testId) WHERE entry.seq > ?`,
    [seq],
  );
  return changes.some(({ kind }) => kind === 'notebook.merged') ? null : changes;
}
