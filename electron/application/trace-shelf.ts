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
    const key = `${sha256} ${JSON.stringify(reading)}`;
    const known = this.#traces.get(key);
    if (known) return { ...known, name };
    const bytes = this.#store.attachment(sha256);
    if (!bytes) throw new Error(`The trace file ${name} is missing from the notebook.`);
    const trace = { ...readTraceCsv(bytes, reading), name };
    if (this.#traces.size >= KEPT) this.#traces.delete(this.#traces.keys().next().value!);
    this.#traces.set(key, trace);
    return trace;
  }
}
