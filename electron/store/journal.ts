import { closeSync, constants, existsSync, fstatSync, fsyncSync, ftruncateSync, openSync, readFileSync, rmSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { createHash } from 'node:crypto';
import { NotebookFileError } from './notebook-file-error.ts';
import { companionPaths } from './companion-paths.ts';
import { copyFileDurably, syncFolder, writeAll } from './durable-file.ts';
import type { Entry } from '../../shared-lib/notebook/entry.ts';

/** The content of an attachment, named by its SHA-256 in hex. */
export interface AttachmentContent {
  sha256: string;
  bytes: Uint8Array;
}

/** What was acknowledged together. */
export interface Batch {
  /** Entries of other benches as they were sealed there; they stand before `entries`, whose merge seals them. */
  brought?: Entry[];
  entries: Entry[];
  attachments: AttachmentContent[];
}

/** What a journal holds. A batch counts only when its line is whole. */
export interface JournalContent {
  batches: Batch[];
  /** Length of the whole lines that `batches` was read from. */
  goodBytes: number;
  /** Bytes of an unfinished last line: power went while it was written, so it was never acknowledged. */
  tornBytes: number;
  /** Number of the first finished line that is not as it was written; it and what follows is not in `batches`. */
  damagedLine: number | null;
}

/**
 * Entries that the notebook file does not hold yet. One line per batch: SHA-256 of the JSON, a blank, the JSON, a line
 * feed. A line that has been fsynced is acknowledged.
 */
export class Journal {
  private broken = false;

  private constructor(
    private readonly path: string,
    private readonly fd: number,
    private length: number,
  ) {}

  /** Opens the journal for writing behind its first `length` bytes; what follows them is cut off. */
  static open(path: string, length: number, mode: number): Journal {
    const fd = openSync(path, constants.O_RDWR | constants.O_CREAT, mode);
    try {
      if (fstatSync(fd).size > length) {
        ftruncateSync(fd, length);
        fsyncSync(fd);
      }
      syncFolder(path);
    } catch (error) {
      closeSync(fd);
      throw error;
    }
    return new Journal(path, fd, length);
  }

  get isEmpty(): boolean {
    return this.length === 0;
  }

  /** In an unknown state: nothing more may be written behind it. */
  get isBroken(): boolean {
    return this.broken;
  }

  /**
   * Appends a batch and waits until it is on the disk.
   * @throws the system's error; the journal is then as it was before, or `isBroken`.
   */
  append(batch: Batch): void {
    const line = Buffer.from(lineOf(batch));
    try {
      writeAll(this.fd, line, this.length);
      fsyncSync(this.fd);
    } catch (error) {
      this.cut(this.length);
      throw error;
    }
    this.length += line.length;
  }

  /** Forgets all batches: the file holds them now. @throws the system's error; the journal then `isBroken`. */
  clear(): void {
    this.cut(0);
    this.length = 0;
  }

  /** @param remove Whether an empty journal may be removed; never when another program may write to it by now. */
  close(remove: boolean): void {
    closeSync(this.fd);
    if (remove && this.isEmpty) rmSync(this.path, { force: true });
  }

  private cut(length: number): void {
    try {
      ftruncateSync(this.fd, length);
      fsyncSync(this.fd);
    } catch (error) {
      this.broken = true;
      throw error;
    }
  }
}

/** Reads a journal; a missing one is empty. @throws the system's error. */
export function readJournal(path: string): JournalContent {
  const bytes = bytesOf(path);
  const content: JournalContent = { batches: [], goodBytes: 0, tornBytes: 0, damagedLine: null };
  while (content.goodBytes < bytes.length) {
    const end = bytes.indexOf(0x0a, content.goodBytes);
    if (end === -1) {
      content.tornBytes = bytes.length - content.goodBytes;
      break;
    }
    const batch = batchIn(bytes.toString('utf8', content.goodBytes, end));
    if (!batch) {
      content.damagedLine = content.batches.length + 1;
      break;
    }
    content.batches.push(batch);
    content.goodBytes = end + 1;
  }
  return content;
}

/** Copies the journal of `file` when it cannot be replayed as a whole. @returns the copy's name. @throws the system's error. */
export function keepJournal(file: string): string {
  const { journal, keptJournal } = companionPaths(file);
  const kept = keptJournal(sha256Hex(readFileSync(journal)));
  if (!existsSync(kept)) copyFileDurably(journal, kept, `${kept}.writing`);
  return basename(kept);
}

function bytesOf(path: string): Buffer {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return Buffer.alloc(0);
  if (!found.isFile()) throw new NotebookFileError('io', `${basename(path)} should be a file, but it is something else; move it away.`);
  return readFileSync(path);
}

function lineOf(batch: Batch): string {
  const json = JSON.stringify({
    ...(batch.brought ? { brought: batch.brought } : {}),
    entries: batch.entries,
    attachments: batch.attachments.map(({ sha256, bytes }) => ({ sha256, base64: Buffer.from(bytes).toString('base64') })),
  });
  return `${sha256Hex(json)} ${json}\n`;
}

/** The checksum vouches for the form: only this program writes such lines. */
function batchIn(line: string): Batch | undefined {
  const json = line.slice(65);
  if (line[64] !== ' ' || sha256Hex(json) !== line.slice(0, 64)) return undefined;
  const stored = JSON.parse(json) as { brought?: Entry[]; entries: Entry[]; attachments: { sha256: string; base64: string }[] };
  return {
    ...(stored.brought ? { brought: stored.brought } : {}),
    entries: stored.entries,
    attachments: stored.attachments.map(({ sha256, base64 }) => ({ sha256, bytes: new Uint8Array(Buffer.from(base64, 'base64')) })),
  };
}

/** SHA-256 in hex. */
export function sha256Hex(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}
