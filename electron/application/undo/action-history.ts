import type { Entry } from '../../../shared-lib/notebook/entry.ts';

const KEPT = 200;

/** What was recorded since the notebook was opened, one item for everything that one call recorded. */
export class ActionHistory {
  #actions: Entry[][] = [];
  /** Numbers of the entries that were undone and of those that undid them: what they say stands no more. */
  readonly #cancelled = new Set<number>();

  /** A wrong passphrase is nobody's work. */
  note(entries: Entry[]): void {
    const work = entries.filter(({ kind }) => kind !== 'signing.refused');
    if (work.length > 0) this.#actions = [...this.#actions, work].slice(-KEPT);
  }

  /** The last action of a person, or `undefined`. */
  last(personId: string | null): Entry[] | undefined {
    return this.#actions.findLast(([first]) => first?.by === personId);
  }

  /** Takes note that `action` was undone by the entries `by`. */
  undone(action: Entry[], by: Entry[]): void {
    this.#actions = this.#actions.filter((other) => other !== action);
    for (const { seq } of [...action, ...by]) this.#cancelled.add(seq);
  }

  /** Those of `entries` that were neither undone nor undid others. */
  standing(entries: Entry[]): Entry[] {
    return entries.filter(({ seq }) => !this.#cancelled.has(seq));
  }
}
