import type { Trace } from '../../shared-lib/method/method.ts';
import type { TraceReading } from '../../shared-lib/notebook/entry.ts';
import { readTraceCsv } from '../exchange/trace-csv.ts';
import type { NotebookStore } from '../store/notebook-store.ts';

const KEPT = 200;

/** Traces read from the notebook's attachments; reading a file again for every keystroke would be felt. */
export class TraceShelf {
  readonly #store: NotebookStore;
  readonly #traces = new Map<string, Trace>();

  constructor(store: NotebookStore) {
    this.#store = store;
  }

  /** @throws Error when the notebook has no such attachment */
  get(sha256: string, reading: TraceReading, name: string): Trace {
    const known = this.#traces.get(keyOf(sha256, reading));
    if (known) return { ...known, name };
    const bytes = this.#store.attachment(sha256);
    if (!bytes) throw new Error(`The trace file ${name} is missing from the notebook.`);
    return this.read(sha256, bytes, reading, name);
  }

  /**
   * Reads a trace of which the notebook holds nothing yet, and keeps it for `get`.
   * @throws InputError as `readTraceCsv`
   */
  read(sha256: string, bytes: Uint8Array, reading: TraceReading, name: string): Trace {
    const trace = { ...readTraceCsv(bytes, reading), name };
    if (this.#traces.size >= KEPT) this.#traces.delete(this.#traces.keys().next().value!);
    this.#traces.set(keyOf(sha256, reading), trace);
    return trace;
  }
}

/** Whatever the order in which the reading's keys arrive. */
function keyOf(sha256: string, reading: TraceReading): string {
  return `${sha256} ${JSON.stringify(Object.entries(reading).sort())}`;
}
