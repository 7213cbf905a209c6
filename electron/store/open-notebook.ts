import { accessSync, constants, realpathSync, rmSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { backUpBeforeMigration } from './backup.ts';
import type { Clock } from './clock.ts';
import { companionPaths } from './companion-paths.ts';
import { Database, loadSqlite } from './database.ts';
import { Journal, keepJournal, readJournal, type JournalContent } from './journal.ts';
import { Lock } from './lock.ts';
import { checkDatabase, checkNotebookHeader, readNotebookFile, type FileState } from './notebook-file.ts';
import { fileError, NotebookFileError, reasonOf } from './notebook-file-error.ts';
import { replay } from './record.ts';
import { migrate, schemaOf, schemaVersion } from './schema/migrations.ts';

/** An opened notebook, for the store to hold. */
export interface OpenNotebook {
  file: string;
  database: Database;
  mode: number;
  notes: string[];
  /** `null` when it can only be read. */
  writing: Writing | null;
  readOnly: string;
}

export interface Writing {
  lock: Lock;
  journal: Journal;
  state: FileState;
  /** The database holds something that neither the file nor the journal does (a new schema, remade tables). */
  unwritten: boolean;
  /** The journal could not be replayed as a whole: a copy was kept, and it must be cleared behind the next write. */
  writeNow: boolean;
}

/** How often a reader tries to read file and journal between two checkpoints of the writer. */
const snapshotTries = 20;

/**
 * Opens a notebook for writing where that can be, else for reading; adds what the journal holds beyond the file.
 * @throws NotebookFileError; the file is then as it was.
 */
export async function openNotebook(path: string, clock: Clock): Promise<OpenNotebook> {
  const sqlite = await loadSqlite();
  const file = realPath(path);
  checkNotebookHeader(file); // before anything is put beside a file that may not be ours
  const lock = takeLock(file, clock);
  if (typeof lock === 'string') return openForReading(file, new Database(sqlite), lock);
  try {
    return openForWriting(file, new Database(sqlite), lock);
  } catch (error) {
    lock.release();
    throw fileError(`Opening ${basename(file)}`, error);
  }
}

/** Opens a notebook for reading only, whoever has it; puts nothing beside it. @throws NotebookFileError. */
export async function openNotebookToRead(path: string): Promise<OpenNotebook> {
  const sqlite = await loadSqlite();
  const file = realPath(path);
  try {
    return openForReading(file, new Database(sqlite), `${basename(file)} was opened for reading only.`);
  } catch (error) {
    throw fileError(`Opening ${basename(file)}`, error);
  }
}

function openForWriting(file: string, empty: Database, lock: Lock): OpenNotebook {
  const paths = companionPaths(file);
  rmSync(paths.writing, { force: true });
  const { bytes, state, mode } = readNotebookFile(file);
  const database = load(file, empty, bytes);
  const unwritten = schemaOf(database) < schemaVersion;
  if (unwritten) backUpBeforeMigration(file, schemaOf(database));
  migrate(database);
  const content = readJournal(paths.journal);
  const { added, stopped, notes } = replayed(database, content);
  if (added > 0) {
    notes.unshift(`${added} ${added === 1 ? 'entry was' : 'entries were'} brought in from the journal: the program had not written the file before it ended.`);
  }
  if (content.tornBytes > 0) {
    notes.push(`An unfinished line at the end of the journal (${content.tornBytes} bytes) was dropped: it had never been acknowledged.`);
  }
  if (stopped !== '') {
    notes.push(`The journal was kept as ${keepJournal(file)}; nothing in it was thrown away.`);
  }
  const journal = Journal.open(paths.journal, content.goodBytes, mode);
  return { file, database, mode, notes, readOnly: '', writing: { lock, journal, state, unwritten, writeNow: stopped !== '' } };
}

function openForReading(file: string, empty: Database, readOnly: string): OpenNotebook {
  const journalPath = companionPaths(file).journal;
  for (let attempt = 1; ; attempt++) {
    const { bytes, state, mode } = readNotebookFile(file);
    const content = readJournal(journalPath);
    const after = statSync(file, { throwIfNoEntry: false });
    if (after?.ino === state.ino && after.mtimeMs === state.mtimeMs) {
      const database = load(file, empty, bytes);
      migrate(database);
      const { notes } = replayed(database, content);
      return { file, database, mode, notes, readOnly, writing: null };
    }
    if (attempt === snapshotTries) throw new NotebookFileError('busy', `${basename(file)} is being written all the time; try again.`);
  }
}

function load(file: string, empty: Database, bytes: Uint8Array): Database {
  const database = empty.another(bytes);
  empty.close();
  try {
    checkDatabase(file, database);
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** Replays the journal. @returns how many entries it added, why it stopped or '', and a sentence about that. */
function replayed(database: Database, content: JournalContent): { added: number; stopped: string; notes: string[] } {
  const { added, stopped: misfit } = replay(database, content.batches);
  const stopped = misfit || (content.damagedLine === null ? '' : `line ${content.damagedLine} of the journal is damaged`);
  const notes = stopped === '' ? [] : [`The journal could only be read in part: ${stopped}. What follows it is not in this notebook.`];
  return { added, stopped, notes };
}

/** The lock, or the sentence why the notebook can only be read. */
function takeLock(file: string, clock: Clock): Lock | string {
  try {
    accessSync(file, constants.W_OK);
    return Lock.take(companionPaths(file).lock, clock.now(), clock.ulid());
  } catch (error) {
    return `${basename(file)} can only be read here: ${reasonOf(error)}.`;
  }
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch (error) {
    throw fileError(`Opening ${basename(path)}`, error);
  }
}
