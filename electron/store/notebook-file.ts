import { closeSync, constants, existsSync, fstatSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { companionPaths } from './companion-paths.ts';
import type { Database } from './database.ts';
import { sha256Hex } from './journal.ts';
import { fileError, NotebookFileError } from './notebook-file-error.ts';
import { applicationId, schemaVersion } from './schema/migrations.ts';

/** A state of the file on disk, to notice that somebody else wrote to it. */
export interface FileState {
  size: number;
  mtimeMs: number;
  ino: number;
  sha256: string;
}

const headerLength = 100;
const magic = 'SQLite format 3\0';

/** Reads the whole file. @throws NotebookFileError when it cannot be a notebook of this program; nothing is written. */
export function readNotebookFile(file: string): { bytes: Uint8Array; state: FileState; mode: number } {
  return withFile(file, (fd) => {
    const { mtimeMs, ino, mode } = fstatSync(fd);
    const bytes = new Uint8Array(readFileSync(fd));
    judgeHeader(file, bytes.subarray(0, headerLength), bytes.length);
    return { bytes, state: { size: bytes.length, mtimeMs, ino, sha256: sha256Hex(bytes) }, mode: mode & 0o777 };
  });
}

/** Looks at the header only. @throws NotebookFileError as `readNotebookFile`. */
export function checkNotebookHeader(file: string): void {
  withFile(file, (fd) => {
    const header = new Uint8Array(headerLength);
    const length = readSync(fd, header, 0, headerLength, 0);
    judgeHeader(file, header.subarray(0, length), fstatSync(fd).size);
  });
}

/**
 * Looks for damage inside: a foreign or cut SQLite file opens without complaint.
 * @throws NotebookFileError.
 */
export function checkDatabase(file: string, database: Database): void {
  const findings = soundnessOf(database);
  if (findings === '') return;
  throw new NotebookFileError(
    'damaged',
    `${basename(file)} is damaged inside: a part of it cannot be read. ${leftAsItIs(file)}`,
    { cause: findings },
  );
}

/** What SQLite finds wrong with a database, in its words; '' when it is sound. */
export function soundnessOf(database: Database): string {
  try {
    const findings = database.all<{ quick_check: string }>('PRAGMA quick_check(3)').map((row) => row.quick_check);
    if (findings.join() !== 'ok') return findings.join('; ');
    const orphan = database.one<{ table: string; parent: string }>('PRAGMA foreign_key_check');
    return orphan ? `a line of ${orphan.table} refers to a missing line of ${orphan.parent}` : '';
  } catch (error) {
    return (error as Error).message;
  }
}

/** Whether the file on disk still has the content of `state`; `false` also when it is gone. */
export function isUnchanged(file: string, state: FileState): boolean {
  const found = statSync(file, { throwIfNoEntry: false });
  if (!found) return false;
  if (found.size !== state.size) return false;
  if (found.mtimeMs === state.mtimeMs && found.ino === state.ino) return true;
  return sha256Hex(readFileSync(file)) === state.sha256; // touched or copied, but the same content
}

/** The state of the file that was just written with `bytes`. */
export function stateAfterWriting(file: string, bytes: Uint8Array): FileState {
  const { mtimeMs, ino } = statSync(file);
  return { size: bytes.length, mtimeMs, ino, sha256: sha256Hex(bytes) };
}

/** Header of a SQLite file: https://www.sqlite.org/fileformat.html, section 1.3. */
function judgeHeader(file: string, header: Uint8Array, size: number): void {
  const name = basename(file);
  if (size === 0) throw new NotebookFileError('not-a-notebook', `${name} is empty (0 bytes), so it is not a notebook.`);
  const view = new DataView(header.buffer, header.byteOffset, header.byteLength);
  const start = new TextDecoder('latin1').decode(header.subarray(0, magic.length));
  if (start !== magic || header.length < headerLength) {
    throw new NotebookFileError('not-a-notebook', `${name} is not a notebook: it is a file of another kind, or its beginning is damaged.`);
  }
  if (view.getUint32(68) !== applicationId) {
    throw new NotebookFileError('not-a-notebook', `${name} is not a notebook: another program wrote it.`);
  }
  const schema = view.getUint32(60);
  if (schema > schemaVersion) {
    throw new NotebookFileError(
      'newer',
      `${name} was written by a newer version of Laydown (schema ${schema}; this one knows up to ${schemaVersion}). Open it with that version.`,
    );
  }
  const pageSize = view.getUint16(16) === 1 ? 65_536 : view.getUint16(16);
  const expected = pageSize * view.getUint32(28);
  if (size !== expected) {
    throw new NotebookFileError(
      'damaged',
      `${name} is ${size < expected ? 'cut off' : 'longer than it should be'}: it has ${size} bytes and should have ${expected}. ${leftAsItIs(file)}`,
    );
  }
}

function leftAsItIs(file: string): string {
  const backups = companionPaths(file).backups;
  const instead = existsSync(backups) ? `open the newest backup from the folder ${basename(backups)}` : 'no backups stand beside it, so open a copy that was kept elsewhere';
  return `It was left as it is; ${instead}.`;
}

function withFile<Value>(file: string, work: (fd: number) => Value): Value {
  let fd: number;
  try {
    if (!statSync(file).isFile()) throw new NotebookFileError('not-a-notebook', `${basename(file)} is not a file, so it is not a notebook.`);
    fd = openSync(file, constants.O_RDONLY);
  } catch (error) {
    throw fileError(`Opening ${basename(file)}`, error);
  }
  try {
    return work(fd);
  } catch (error) {
    throw fileError(`Reading ${basename(file)}`, error);
  } finally {
    closeSync(fd);
  }
}
