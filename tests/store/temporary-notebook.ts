import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Clock } from '../../electron/store/clock.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { beginning, reading } from './drafts.ts';

/** A folder that is removed after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'laydown-store-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that stands until the test moves it. */
export function testClock(start = '2025-05-03T08:00:00.000Z'): Clock & { at: Date } {
  let count = 0;
  const prefix = Math.random().toString(36).slice(2, 10);
  return {
    at: new Date(start),
    now() {
      return this.at;
    },
    ulid: () => `${prefix}-${++count}`,
  };
}

/** A notebook with its beginning and `readings` readings, in a folder of its own. */
export async function newNotebook(readings = 0, clock = testClock()): Promise<{ path: string; folder: string; store: NotebookStore; clock: typeof clock }> {
  const folder = temporaryFolder();
  const path = join(folder, 'lab.laydown');
  const store = await NotebookStore.create(path, clock);
  store.append(beginning);
  for (let number = 1; number <= readings; number++) store.append([reading(number)]);
  return { path, folder, store, clock };
}

/**
 * What a kill leaves behind, without the kill: file and journal stay as they are, and the lock belongs to nobody alive.
 */
export function abandon(path: string): void {
  rmSync(`${path}.lock`);
}
