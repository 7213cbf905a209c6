import type { Timers } from './surroundings.ts';

const IDLE_MS = 10_000;
const MANY_ENTRIES = 500;

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

  noteEntries(count: number): void {
    this.#entries += count;
    this.#callOff();
    this.#callOff = this.#timers.after(this.#entries >= MANY_ENTRIES ? 0 : IDLE_MS, () => {
      this.#entries = 0;
      this.#checkpoint();
    });
  }

  stop(): void {
    this.#callOff();
  }
}
