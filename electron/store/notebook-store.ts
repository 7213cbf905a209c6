import { existsSync, lstatSync, realpathSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { DraftEntry, Entry } from '../../shared-lib/notebook/entry.ts';
import { applyEntry, clearTables } from './apply-changes.ts';
import { keepNotebook, writeNotebook } from './checkpoint.ts';
import type { Clock } from './clock.ts';
import { companionPaths } from './companion-paths.ts';
import { tableDifferences } from './compare-tables.ts';
import { Database, loadSqlite, type SqlValue } from './database.ts';
import { keepJournal, type AttachmentContent, type Batch } from './journal.ts';
import { Lock } from './lock.ts';
import { fileError, NotebookFileError } from './notebook-file-error.ts';
import { openNotebook, openNotebookToRead, type OpenNotebook, type Writing } from './open-notebook.ts';
import { addBatch, lookUpIn, readEntries, recordEnd, type RecordEnd } from './record.ts';
import { migrate } from './schema/migrations.ts';
import { sealBatch } from './seal-batch.ts';

/** What a checkpoint did. */
export interface CheckpointReport {
  /** `false`: the file held everything already, or the notebook can only be read. */
  wrote: boolean;
  /** What the person should know, one sentence each. */
  notes: string[];
}

/** An open notebook: the record, the tables made from it, and the file that holds them. */
export class NotebookStore {
  /** As it was given. */
  readonly path: string;
  /** What was found on opening, one sentence each. */
  readonly openingNotes: string[];
  private readonly file: string;
  private readonly database: Database;
  private readonly mode: number;
  private readonly clock: Clock;
  private writing: Writing | null;
  private readOnlyReason: string;
  private end: RecordEnd;

  private constructor(path: string, opened: OpenNotebook, clock: Clock) {
    this.path = path;
    this.file = opened.file;
    this.database = opened.database;
    this.mode = opened.mode;
    this.clock = clock;
    this.writing = opened.writing;
    this.readOnlyReason = opened.readOnly;
    this.openingNotes = opened.notes;
    this.end = recordEnd(opened.database);
  }

  /**
   * Makes an empty notebook and opens it.
   * @throws NotebookFileError when something stands at `path` already or it cannot be written.
   */
  static async create(path: string, clock: Clock): Promise<NotebookStore> {
    const sqlite = await loadSqlite();
    const notes: string[] = [];
    try {
      const file = join(realpathSync(dirname(path)), basename(path));
      const paths = companionPaths(file);
      const lock = Lock.take(paths.lock, clock.now(), clock.ulid());
      if (typeof lock === 'string') throw new NotebookFileError('exists', `${basename(path)} is being made or is open elsewhere.`);
      try {
        if (lstatSync(file, { throwIfNoEntry: false })) {
          throw new NotebookFileError('exists', `${basename(path)} is there already; choose another name. Nothing was overwritten.`);
        }
        if (existsSync(paths.journal)) {
          notes.push(`A journal of an earlier notebook of this name was kept as ${keepJournal(file)}.`);
          rmSync(paths.journal);
        }
        const database = new Database(sqlite);
        migrate(database);
        writeNotebook(file, database, null, 0o666 & ~process.umask(), clock.now());
        database.close();
      } finally {
        lock.release();
      }
    } catch (error) {
      throw fileError(`Making ${basename(path)}`, error);
    }
    const store = await NotebookStore.open(path, clock);
    store.openingNotes.unshift(...notes);
    return store;
  }

  /**
   * Opens a notebook, for reading only where it cannot be written to (see `readOnly`), and adds what its journal holds.
   * @throws NotebookFileError with one clear sentence; the file is then as it was.
   */
  static async open(path: string, clock: Clock): Promise<NotebookStore> {
    const store = new NotebookStore(path, await openNotebook(path, clock), clock);
    if (store.writing?.writeNow) {
      try {
        store.openingNotes.push(...store.checkpoint().notes);
      } catch (error) {
        store.release();
        throw error;
      }
    }
    return store;
  }

  /** Opens a notebook for reading only, and touches nothing beside it: it may be open for writing elsewhere. @throws NotebookFileError. */
  static async openToRead(path: string, clock: Clock): Promise<NotebookStore> {
    return new NotebookStore(path, await openNotebookToRead(path), clock);
  }

  /** '' or why nothing can be recorded, in one sentence. It may change while the notebook is open. */
  get readOnly(): string {
    return this.readOnlyReason;
  }

  get entryCount(): number {
    return this.end.count;
  }

  /** Size of the file as it was read or written last; 0 when it can only be read. */
  get fileBytes(): number {
    return this.writing?.state.size ?? 0;
  }

  /** Hash of the last entry; 64 zeros in an empty record. */
  get chainHash(): string {
    return this.end.hash;
  }

  /**
   * Records entries, all or none. When this returns they are on the disk. Its cost does not grow with the notebook.
   * @param attachments Content of the files that the drafts announce by 'attachment.added'.
   * @throws InputError when an entry is not as its schema asks, or refers to something that is not in the notebook.
   * @throws NotebookFileError when it cannot be written; then nothing of it is recorded.
   */
  append(drafts: DraftEntry[], attachments: AttachmentContent[] = []): Entry[] {
    return drafts.length === 0 ? [] : this.record(sealBatch(drafts, attachments, this.end, this.clock));
  }

  /**
   * Takes in entries of another notebook and records the merge that seals them, all or nothing. The files that they announce
   * go ahead into the journal one by one, where nothing speaks of them yet.
   * @param brought As they were sealed there, in the order in which they are to be applied.
   * @throws as `append`.
   */
  bringIn(brought: Entry[], merge: DraftEntry, attachments: Iterable<AttachmentContent>): Entry {
    const behind = { count: this.end.count + brought.length, hash: this.end.hash };
    const sealed = sealBatch([merge], [], behind, this.clock);
    for (const attachment of attachments) this.record({ entries: [], attachments: [attachment] });
    return this.record({ ...sealed, brought })[0]!;
  }

  private record(batch: Batch): Entry[] {
    const writing = this.writingOrThrow();
    let acknowledged = false;
    try {
      // The journal comes last before the commit: what the tables refuse never reaches the disk.
      this.database.transaction(() => {
        this.addOrRefuse(() => addBatch(this.database, batch));
        writing.journal.append(batch);
        acknowledged = true;
      });
    } catch (error) {
      if (error instanceof InputError) throw error;
      if (acknowledged || writing.journal.isBroken) this.stop('Writing to the journal failed in a way that could not be undone; close the notebook and open it again.');
      const fault = fileError(`Recording in ${basename(this.file)}`, error);
      throw new NotebookFileError(fault.code, `${fault.message} Nothing of it was recorded.`, { cause: error });
    }
    this.end = recordEnd(this.database);
    return batch.entries;
  }

  /** Every row of a query that reads. */
  all<Row>(sql: string, params: readonly SqlValue[] = []): Row[] {
    return this.database.all<Row>(sql, params);
  }

  /** The first row of a query that reads. */
  one<Row>(sql: string, params: readonly SqlValue[] = []): Row | undefined {
    return this.database.one<Row>(sql, params);
  }

  attachment(sha256: string): Uint8Array | undefined {
    return this.one<{ bytes: Uint8Array }>('SELECT bytes FROM attachment_content WHERE sha256 = ?', [sha256])?.bytes;
  }

  /** Entries in order, both ends included. */
  entries(from = 1, to = this.end.count): Iterable<Entry> {
    return readEntries(this.database, from, to);
  }

  /** An entry by its id. */
  entry(id: string): Entry | undefined {
    return lookUpIn(this.database).byId(id);
  }

  /** Makes the tables anew from the entries. @throws Error when the entries do not fit together; nothing is changed. */
  rebuild(): void {
    this.database.transaction(() => {
      clearTables(this.database);
      for (const entry of this.entries()) applyEntry(this.database, entry, lookUpIn(this.database));
    });
    if (this.writing) this.writing.unwritten = true;
  }

  /** Where the tables say something else than the entries, one sentence each: somebody changed them by hand. */
  tableDifferences(): string[] {
    return tableDifferences(this.database, this.entries(), lookUpIn(this.database));
  }

  /**
   * Writes everything into the notebook file and clears the journal. A kill at any instant of it loses nothing.
   * @throws NotebookFileError; the entries are then still in the journal, or, when somebody else changed the file, in a
   *   copy beside it.
   */
  checkpoint(): CheckpointReport {
    const { writing } = this;
    if (!writing || (writing.journal.isEmpty && !writing.unwritten && !writing.writeNow)) return { wrote: false, notes: [] };
    this.writingOrThrow();
    try {
      const { state, notes } = writeNotebook(this.file, this.database, writing.state, this.mode, this.clock.now());
      Object.assign(writing, { state, unwritten: false, writeNow: false });
      writing.journal.clear();
      return { wrote: true, notes };
    } catch (error) {
      if (error instanceof NotebookFileError && error.code === 'changed-outside') throw this.standAside(error.message);
      if (writing.journal.isBroken) this.stop('The journal could not be cleared; close the notebook and open it again.');
      const fault = fileError(`Writing ${basename(this.file)}`, error);
      throw new NotebookFileError(fault.code, `${fault.message} The entries are safe in ${basename(companionPaths(this.file).journal)}.`, { cause: error });
    }
  }

  /** Writes the file, gives up the lock and forgets the notebook. @throws as `checkpoint`, but only when closed. */
  close(): void {
    try {
      this.checkpoint();
    } finally {
      this.release();
    }
  }

  private release(): void {
    this.stop('This notebook is closed.');
    this.database.close();
  }

  private stop(reason: string): void {
    if (this.writing) this.writing.journal.close(this.writing.lock.isHeld());
    this.writing?.lock.release();
    this.writing = null;
    this.readOnlyReason = reason;
  }

  private writingOrThrow(): Writing {
    if (!this.writing) throw new NotebookFileError('read-only', this.readOnlyReason);
    if (!this.writing.lock.isHeld()) throw this.standAside(`Another program took over ${basename(this.file)}.`);
    return this.writing;
  }

  /** Somebody else writes to the file: ours is kept under another name, theirs is left alone. */
  private standAside(why: string): NotebookFileError {
    const kept = keepNotebook(this.file, this.database, this.mode, this.clock.now());
    const sentence = `${why} Nothing was overwritten: everything recorded here is kept as ${kept}.`;
    this.stop(`${sentence} Open that file to go on.`);
    return new NotebookFileError('changed-outside', sentence);
  }

  /** A reference or a key that does not hold is the caller's mistake, not the file's. */
  private addOrRefuse(work: () => void): void {
    try {
      work();
    } catch (error) {
      const message = (error as Error).message;
      if (message.includes('FOREIGN KEY')) {
        throw new InputError('', null, 'This entry speaks of something that is not in the notebook (a sample, a test, a lot, a file).');
      }
      if (message.includes('UNIQUE')) throw new InputError('', null, `What this entry adds is in the notebook already (${message.split(': ')[1] ?? ''}).`);
      throw error;
    }
  }
}
