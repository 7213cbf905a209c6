import type { Client } from '../../shared-lib/api.ts';
import { draftChanges, draftPlace, draftWords } from './draft-words.ts';
import { placeHash } from './place.ts';
import type { PutBack } from './held-draft.svelte.ts';

/** Long enough that a letter is not a file, short enough that a crash costs a word. */
const pauseMs = 300;

/** A draft that came back, in words, and where it stands. */
export interface DraftBack {
  name: string;
  words: string;
  /** Of its place. */
  hash: string;
}

/** Has what is typed and not yet entered kept by the application, and gives it back after a crash or a reload. */
export class DraftKeeper {
  #client: Client;
  /** Handle of the notebook that the drafts are of: another may be open by the time that one is sent. */
  #notebook = '';
  #restored: Record<string, string> = {};
  /** What the application has, by name. */
  #known: Record<string, string> = {};
  #waiting: Record<string, string | null> = {};
  /** Names under which this window has sent anything: what stands there is its own, whatever another window does. */
  #own: Record<string, true> = {};
  #timer: ReturnType<typeof setTimeout> | undefined;
  #back = $state.raw<DraftBack[]>([]);
  #said = $state.raw<string[]>([]);

  constructor(client: Client) {
    this.#client = client;
  }

  /** What came back, until it is dismissed. */
  get back(): readonly DraftBack[] {
    return this.#back;
  }

  /** Sentences about what does not fit as it came back. */
  get said(): readonly string[] {
    return this.#said;
  }

  dismiss(): void {
    this.#back = [];
    this.#said = [];
  }

  /** Asks for what was kept of the notebook that is open now; before its screens are shown. */
  async load(notebook: string): Promise<void> {
    clearTimeout(this.#timer);
    this.#waiting = {};
    this.#own = {};
    this.#notebook = notebook;
    const answer = await this.#client.call('drafts.get', {});
    this.#restored = answer.ok ? answer.value.drafts : {};
    this.#known = { ...this.#restored };
    this.#said = [];
    const found = Object.keys(this.#restored).flatMap((name) => {
      const place = draftPlace(name);
      if (!place) this.#drop(name);
      return place ? [{ name, words: draftWords(name), hash: placeHash(place) }] : [];
    });
    this.#back = found.filter(({ words, hash }, index) => found.findIndex((other) => other.words === words && other.hash === hash) === index);
  }

  /** Whether something of that name came back and nobody has taken it up yet. */
  waits(name: string): boolean {
    return name in this.#restored;
  }

  /**
   * Puts what was typed under this name before, once, where it belongs.
   * @param put says whether it fits there; what does not is dropped with a word
   */
  take(name: string, put: (content: unknown) => PutBack): void {
    const content = this.#restored[name];
    if (content === undefined) return;
    delete this.#restored[name];
    const fit = put(parsed(content));
    if (fit === 'misfit') this.#drop(name);
    else if (fit === 'moved' && draftChanges(name)) this.#say(`What came back as ${draftWords(name)} was typed before somebody changed the same thing: compare the two before it is kept.`);
  }

  /** A window entered it or put it down. Gives what came back here and was taken up, or `null` where it is not that any more. */
  ended(name: string): string | null {
    if (name in this.#own || name in this.#waiting) return null;
    const content = this.#known[name] ?? null;
    const taken = !(name in this.#restored);
    delete this.#known[name];
    delete this.#restored[name];
    this.#back = this.#back.filter((back) => back.name !== name);
    return taken ? content : null;
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

  /** Entered or put down, also where it was never taken up. */
  forget(name: string): void {
    delete this.#restored[name];
    this.note(name, null);
  }

  /** Sends at once what waits, e.g. before the page is left. */
  flush(): void {
    clearTimeout(this.#timer);
    for (const [name, content] of Object.entries(this.#waiting)) {
      this.#own[name] = true;
      if (content === null) {
        delete this.#known[name];
        this.#back = this.#back.filter((back) => back.name !== name);
      } else this.#known[name] = content;
      void this.#client.call('draft.keep', { notebook: this.#notebook, name, content });
    }
    this.#waiting = {};
  }

  #drop(name: string): void {
    this.forget(name);
    this.#say(`What was typed as ${draftWords(name)} came from another version of the program and fits nowhere in this one: it was dropped.`);
  }

  #say(sentence: string): void {
    if (!this.#said.includes(sentence)) this.#said = [...this.#said, sentence];
  }
}

/** `undefined` for what cannot be read. */
function parsed(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    return undefined;
  }
}
