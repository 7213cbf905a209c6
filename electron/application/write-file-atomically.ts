import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';

/** Writes `text` beside `file` and renames it over, so that a reader sees the old content or the new, never a part. */
export function writeFileAtomically(file: string, text: string): void {
  const temporary = `${file}.${process.pid}.tmp`;
  const handle = openSync(temporary, 'w');
  try {
    writeSync(handle, text);
    fsyncSync(handle);
    closeSync(handle);
    renameSync(temporary, file);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}
