import type { Client } from '../../shared-lib/api.ts';
import { draftWords } from './draft-words.ts';

/** Long enough that a letter is not a file, short enough that a crash costs a word. */
const pauseMs = 300;

/** Has what is typed and not yet entered kept by the application, and gives it back after a crash or a reload. */
export class DraftKeeper {
  #client: Client;
  #restored: Record<string, string> = {};
  /** What the application has, by name. */
  #known: Record<string, string> = {};
  #waiting: Record<string, string | null> = {};
  #timer: ReturnType<typeof setTimeout> | undefined;
  #back = $state<string[]>([]);

  constructor(client: Client) {
    this.#client = client;
  }

  /** What came back, in words, until it is dismissed. */
  get back(): readonly string[] {
    return this.#back;
  }

  dismiss(): void {
    this.#back = [];
  }

  /** Asks for what was kept of the notebook that is open now; before its screens are shown. */
  async load(): Promise<void> {
    clearTimeout(this.#timer);
    this.#waiting = {};
    const answer = await this.#client.call('drafts.get', {});
    this.#restored = answer.ok ? answer.value.drafts : {};
    this.#known = { ...this.#restored };
    this.#back = Object.keys(this.#restored).map(draftWords).filter((words, index, all) => all.indexOf(words) === index);
  }

  /** What was typed under this name before, once; `null` where there is nothing or it is not of that kind any more. */
  take<Draft extends object>(name: string): Draft | null {
    const content = this.#restored[name];
    delete this.#restored[name];
    try {
      const draft: unknown = content === undefined ? null : JSON.parse(content);
      return typeof draft === 'object' ? (draft as Draft) : null;
    } catch {
      return null;
    }
  }

  /** @param draft `null`: nothing is typed that was not entered */
  note(name: string, draft: object | null): void {
    const content = draft && JSON.stringify(draft);
    // What came back stays kept until its form or sheet is opened and says otherwise.
    if (content === (name in this.#waiting ? this.#waiting[name] : (this.#known[name] ?? null))) return;
    this.#waiting[name] = content;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.flush(), pauseMs);
  }

  /** Sends at once what waits, e.g. before the page is left. */
  flush(): void {
    clearTimeout(this.#timer);
    for (const [name, content] of Object.entries(this.#waiting)) {
      if (content === null) delete this.#known[name];
      else this.#known[name] = content;
      void this.#client.call('draft.keep', { name, content });
    }
    this.#waiting = {};
  }
}
