import type { Timers } from './surroundings.ts';

const IDLE_MS = 10_000;
const MANY_ENTRIES = 500;
/** A megabyte takes some 6 ms to write: a large file is written the more seldom, or the bench would wait for it too often. */
const IDLE_MS_PER_MB = 100;
const ENTRIES_PER_MB = 5;

/**
 * When the notebook's file is written anew: once the bench has been idle for a while, or soon after many entries.
 * Entries are safe in the journal before that; this only keeps the journal short and the backups coming.
 */
export class CheckpointSchedule {
  readonly #timers: Timers;
  readonly #checkpoint: () => void;
  #entries = 0;
  #callOff: () => void = () => undefined;

  constructor(timers: Timers, checkpoint: () => void) {
    this.#timers = timers;
    this.#checkpoint = checkpoint;
  }

  /** @param fileBytes Size of the file as it was written last. */
  noteEntries(count: number, fileBytes: number): void {
    const megabytes = Math.floor(fileBytes / 1e6);
    this.#entries += count;
    this.#callOff();
    const isMany = this.#entries >= MANY_ENTRIES + ENTRIES_PER_MB * megabytes;
    this.#callOff = this.#timers.after(isMany ? 0 : IDLE_MS + IDLE_MS_PER_MB * megabytes, () => {
      this.#entries = 0;
      this.#checkpoint();
    });
  }

  stop(): void {
    this.#callOff();
  }
}
