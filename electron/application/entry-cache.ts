/** Keeps what was worked out until the next entry. */
export class EntryCache {
  readonly #kept = new Map<string, unknown>();
  #entries = -1;

  /** @param entries how many entries the notebook holds now */
  get<Value>(key: string, entries: number, compute: () => Value): Value {
    if (entries !== this.#entries) {
      this.#kept.clear();
      this.#entries = entries;
    }
    if (!this.#kept.has(key)) this.#kept.set(key, compute());
    return this.#kept.get(key) as Value;
  }
}
