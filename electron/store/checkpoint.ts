import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import { backUpDaily } from './backup.ts';
import { companionPaths } from './companion-paths.ts';
import type { Database } from './database.ts';
import { replaceFile } from './durable-file.ts';
import { fileError, NotebookFileError } from './notebook-file-error.ts';
import { checkDatabase, isUnchanged, stateAfterWriting, type FileState } from './notebook-file.ts';
import { recordEnd } from './record.ts';

/**
 * Writes the database in the place of the notebook file; the file as it was is backed up once a day.
 * @param known The state of the file as we last read or wrote it, `null` for a new file.
 * @param mode Permissions of the file.
 * @returns the new state, and what the person should know.
 * @throws NotebookFileError; the file then stands as it was, and the journal still holds the entries.
 */
export function writeNotebook(file: string, database: Database, known: FileState | null, mode: number, now: Date): { state: FileState; notes: string[] } {
  const name = basename(file);
  const notes: string[] = [];
  try {
    if (known && !existsSync(file)) {
      notes.push(`${name} was no longer there; it was written anew.`);
    } else if (known) {
      if (!isUnchanged(file, known)) {
        throw new NotebookFileError('changed-outside', `${name} was changed by another program (a sync service?) while it was open here.`);
      }
      notes.push(...backUp(file, now));
    }
    const bytes = database.export();
    const copy = database.another(bytes);
    try {
      checkDatabase(file, copy);
    } finally {
      copy.close();
    }
    replaceFile(file, companionPaths(file).writing, bytes, mode);
    return { state: stateAfterWriting(file, bytes), notes };
  } catch (error) {
    throw fileError(`Writing ${name}`, error);
  }
}

/** Writes the database under another name beside the notebook. @returns that name. @throws NotebookFileError. */
export function keepNotebook(file: string, database: Database, mode: number, now: Date): string {
  const kept = companionPaths(file).keptNotebook(recordEnd(database).hash);
  if (!existsSync(kept)) writeNotebook(kept, database, null, mode, now);
  return basename(kept);
}

/** A missing backup must not keep the entries out of the file. */
function backUp(file: string, now: Date): string[] {
  try {
    backUpDaily(file, now);
    return [];
  } catch (error) {
    return [fileError(`The daily backup of ${basename(file)}`, error).message];
  }
}
