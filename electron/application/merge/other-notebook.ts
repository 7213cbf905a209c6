import { realpathSync } from 'node:fs';
import path from 'node:path';
import { verifyChain } from '../../../shared-lib/notebook/hash-chain.ts';
import { sha256Hex } from '../../store/journal.ts';
import { NotebookStore } from '../../store/notebook-store.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';

/** Breaks of the other record that are told; the first say enough. */
const MOST_TOLD = 3;

/**
 * Opens another notebook for reading, looks its record through, and lets go of it after `work`.
 * @throws NotebookFileError when it is no notebook, newer or damaged; Refusal when it is the one that is open, or its record does not verify.
 */
export async function withOtherNotebook<Value>(workplace: Workplace, file: string, work: (store: NotebookStore) => Value): Promise<Value> {
  const { notebook, surroundings } = workplace;
  const store = await NotebookStore.openToRead(file, surroundings.clock);
  try {
    if (realpathSync(file) === realpathSync(notebook.path)) throw new Refusal('conflict', 'This is the notebook that is open here; choose another one.');
    requireSound(store, path.basename(file));
    return work(store);
  } finally {
    store.close();
  }
}

function requireSound(store: NotebookStore, name: string): void {
  const unread = store.openingNotes.filter((note) => note.includes('could only be read in part'));
  const problems = [...unread, ...verifyChain(store.entries()).map(({ text }) => text), ...changedFiles(store)];
  if (problems.length === 0) return;
  const more = problems.length > MOST_TOLD ? ` And ${problems.length - MOST_TOLD} more.` : '';
  throw new Refusal('file', `The record of ${name} does not hold, so nothing was brought in. ${problems.slice(0, MOST_TOLD).join(' ')}${more}`);
}

function changedFiles(store: NotebookStore): string[] {
  return store.all<{ sha256: string; name: string }>('SELECT sha256, name FROM attachment ORDER BY addedSeq').flatMap(({ sha256, name }) => {
    const bytes = store.attachment(sha256);
    if (!bytes) return [`The file ${name} is missing.`];
    return sha256Hex(bytes) === sha256 ? [] : [`The file ${name} was changed after it was put into the notebook.`];
  });
}
