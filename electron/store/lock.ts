import { linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { z } from 'zod';
import { systemCode } from './notebook-file-error.ts';

/** Who writes to a notebook. `start` tells a process from a later one with the same number, where the system says it. */
const holderSchema = z.strictObject({ pid: z.number().int(), start: z.string(), host: z.string(), since: z.string(), token: z.string() });
type Holder = z.output<typeof holderSchema>;

/** A lock file that cannot be read is somebody's unfinished work for this long. */
const unreadableForMs = 60_000;

/** The right to write to a notebook, as a file beside it. One writer; everybody else reads. */
export class Lock {
  private constructor(
    private readonly path: string,
    private readonly text: string,
  ) {}

  /**
   * @param token Unique to this opening of the notebook.
   * @returns the lock, or the sentence that says who has it. A lock left by a process of this computer that runs no
   *   longer is taken over.
   * @throws the system's error when the folder cannot be written to.
   */
  static take(path: string, now: Date, token: string): Lock | string {
    const own: Holder = { pid: process.pid, start: processStart(process.pid), host: hostname(), since: now.toISOString(), token };
    const lock = new Lock(path, JSON.stringify(own));
    if (lock.create()) return lock;
    const found = read(path);
    if (!isStale(path, found, now)) return heldSentence(path, found);
    // The rename lets only one of several openers win; what it took away must be what it judged.
    const aside = `${path}-${token}`;
    try {
      renameSync(path, aside);
    } catch (error) {
      if (systemCode(error) !== 'ENOENT') throw error;
    }
    const taken = read(aside);
    const stillStale = taken === undefined || taken === found;
    if (!stillStale) tryLink(aside, path);
    rmSync(aside, { force: true });
    return stillStale && lock.create() ? lock : heldSentence(path, read(path));
  }

  /** Whether the lock file is still ours: a person may have removed it, another program taken it. */
  isHeld(): boolean {
    return read(this.path) === this.text;
  }

  release(): void {
    if (this.isHeld()) rmSync(this.path, { force: true });
  }

  /** Written aside and linked, so that the lock file is never seen half written. */
  private create(): boolean {
    const aside = `${this.path}-${process.pid}`;
    writeFileSync(aside, this.text);
    try {
      return tryLink(aside, this.path);
    } catch {
      // No hard links on this disk (FAT, some network shares).
      return tryWrite(this.path, this.text);
    } finally {
      rmSync(aside, { force: true });
    }
  }
}

function tryLink(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false;
    throw error;
  }
}

function tryWrite(path: string, text: string): boolean {
  try {
    writeFileSync(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false;
    throw error;
  }
}

function read(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

function holderIn(text: string | undefined): Holder | undefined {
  try {
    return holderSchema.parse(JSON.parse(text ?? ''));
  } catch {
    return undefined;
  }
}

function isStale(path: string, text: string | undefined, now: Date): boolean {
  if (text === undefined) return true;
  const holder = holderIn(text);
  if (!holder) return now.getTime() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0) > unreadableForMs;
  if (holder.host !== hostname()) return false;
  return !isRunning(holder.pid) || holder.start !== processStart(holder.pid);
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0); // sends nothing
    return true;
  } catch (error) {
    return systemCode(error) === 'EPERM';
  }
}

/** Boot and start time of a process on Linux, where numbers are soon used again; '' elsewhere. */
function processStart(pid: number): string {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // Field 22 of proc(5); the name in field 2 may itself hold blanks and brackets.
    return `${boot} ${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19]}`;
  } catch {
    return '';
  }
}

function heldSentence(path: string, text: string | undefined): string {
  const holder = holderIn(text);
  if (!holder) return `Another program has this notebook open, so it can only be read here.`;
  const where = holder.host === hostname() ? 'on this computer' : `on the computer ${holder.host}`;
  const since = `${holder.since.slice(0, 16).replace('T', ' ')} UTC`;
  const remedy = holder.host === hostname() ? '' : ` If nobody works there any more, remove the file ${path}.`;
  return `This notebook is already open for writing ${where} (since ${since}), so it can only be read here.${remedy}`;
}
