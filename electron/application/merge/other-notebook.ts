import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { verifyChain } from '../../../shared-lib/notebook/hash-chain.ts';
import { sha256Hex } from '../../store/journal.ts';
import { NotebookStore } from '../../store/notebook-store.ts';
import { decodeFile } from '../decode-file.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';

/** Where another notebook is: a file on this computer, or one that was chosen on the screen. */
export type OtherNotebook = { file: string } | { name: string; bytes: string };

/** Breaks of the other record that are told; the first say enough. */
const MOST_TOLD = 3;

/**
 * Opens another notebook for reading, looks its record through, and lets go of it after `work`.
 * @throws NotebookFileError when it is no notebook, newer or damaged; Refusal when it is the one that is open, or its record does not verify.
 */
export async function withOtherNotebook<Value>(workplace: Workplace, other: OtherNotebook, work: (store: NotebookStore) => Value): Promise<Value> {
  const { notebook, surroundings } = workplace;
  if ('bytes' in other) {
    const folder = mkdtempSync(path.join(tmpdir(), 'laydown-other-'));
    try {
      const file = path.join(folder, path.basename(other.name));
      writeFileSync(file, decodeFile(other.bytes));
      return await withOtherNotebook(workplace, { file }, work);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  const store = await NotebookStore.openToRead(other.file, surroundings.clock);
  try {
    if (realpathSync(other.file) === realpathSync(notebook.path)) throw new Refusal('conflict', 'This is the notebook that is open here; choose another one.');
    requireSound(store, path.basename(other.file));
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
