import {
  chmodSync,
  closeSync,
  constants,
  copyFileSync,
  fsyncSync,
  openSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { systemCode } from './notebook-file-error.ts';

/** Virus scanners and sync services hold a file for some tenths of a second: 10 tries within about one second. */
const tries = 10;
const firstWaitMs = 20;

/**
 * Puts `bytes` in the place of `path` so that a kill or power failure at any instant leaves the old file or the new
 * one, whole: temporary file in the same folder, fsync, rename, fsync of the folder.
 * @param mode Permissions of the new file.
 * @throws the system's error; the old file then stands as it was.
 */
export function replaceFile(path: string, temporary: string, bytes: Uint8Array, mode: number): void {
  rmSync(temporary, { force: true });
  try {
    const fd = openSync(temporary, 'wx', mode);
    try {
      writeAll(fd, bytes, 0);
      fsyncSync(fd);
    } finally {
      closeSync(fd);
    }
    chmodSync(temporary, mode); // the umask may have taken bits away
    whileHeld(() => renameSync(temporary, path));
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  syncFolder(path);
}

/** Copies a file so that the copy is whole or not there. */
export function copyFileDurably(from: string, to: string, temporary: string): void {
  try {
    copyFileSync(from, temporary, constants.COPYFILE_FICLONE);
    sync(temporary, 'r+');
    whileHeld(() => renameSync(temporary, to));
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  syncFolder(to);
}

/** Writes all of `bytes` from `position` on; a system may take fewer at a time. */
export function writeAll(fd: number, bytes: Uint8Array, position: number): void {
  for (let done = 0; done < bytes.length; ) done += writeSync(fd, bytes, done, bytes.length - done, position + done);
}

/**
 * Makes a new, renamed or removed name in the folder of `path` durable, where the system can: Windows and some network
 * disks cannot, and nothing better can be done there.
 */
export function syncFolder(path: string): void {
  if (process.platform === 'win32') return;
  try {
    sync(dirname(path), 'r');
  } catch (error) {
    if (!['EINVAL', 'ENOTSUP', 'EPERM', 'EACCES'].includes(systemCode(error))) throw error;
  }
}

function sync(path: string, flags: string): void {
  const fd = openSync(path, flags);
  try {
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/** Tries again while another program holds the file (Windows says EBUSY, EPERM or EACCES). */
function whileHeld(work: () => void): void {
  for (let attempt = 1; ; attempt++) {
    try {
      return work();
    } catch (error) {
      if (attempt === tries || !['EBUSY', 'EPERM', 'EACCES'].includes(systemCode(error))) throw error;
      sleep(firstWaitMs * attempt);
    }
  }
}

function sleep(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}
