import { createContext, untrack } from 'svelte';
import { SvelteMap, SvelteSet } from 'svelte/reactivity';
import type { Answer, ApplicationEvent, CallInput, CallName, CallOutput, Client } from '../../shared-lib/api.ts';
import type { SessionView } from '../../shared-lib/notebook/views.ts';
import { Appearance } from './appearance.svelte.ts';
import { BenchSheet } from './bench-sheet.svelte.ts';
import { DraftKeeper } from './draft-keeper.svelte.ts';
import { Form } from './form.svelte.ts';
import { HeldDraft } from './held-draft.svelte.ts';
import type { KeptDraft } from './kept-draft.ts';
import { Navigation } from './navigation.svelte.ts';
import { Undo } from './undo.svelte.ts';
import { isReading } from './reading-calls.ts';

/** What all screens share: the session, the place, the way to the application and forms that were left half filled in. */
export class AppState {
  readonly navigation = new Navigation();
  readonly appearance = new Appearance();
  readonly undo = new Undo(this);
  readonly drafts: DraftKeeper;
  #client: Client;
  #session = $state.raw<SessionView | null>(null);
  #startProblem = $state('');
  #trouble = $state('');
  #writing = $state(0);
  #revision = $state(0);
  #changedAt = 0;
  #refreshTimer: ReturnType<typeof setTimeout> | undefined;
  #forms = new SvelteMap<string, Form<object>>();
  #toOpen = new SvelteSet<string>();
  #drafts = new SvelteMap<string, HeldDraft>();
  #sheets = new SvelteMap<string, BenchSheet>();
  /** By name: stops what follows a form, an editor or a sheet to keep what is typed there. */
  #following: Record<string, () => void> = {};

  constructor(client: Client) {
    this.#client = client;
    this.drafts = new DraftKeeper(client);
  }

  /** `null` until the application has answered for the first time. */
  get session(): SessionView | null {
    return this.#session;
  }

  get startProblem(): string {
    return this.#startProblem;
  }

  /** What the application had to tell unasked, until it is dismissed. */
  get trouble(): string {
    return this.#trouble;
  }

  /** Entries on their way to the disk. */
  get writing(): number {
    return this.#writing;
  }

  /** Goes up when the notebook has changed; a screen that reads it asks again. */
  get revision(): number {
    return this.#revision;
  }

  /** When the notebook last changed as far as is known here, in the page's clock; 0 when never. */
  get changedAt(): number {
    return this.#changedAt;
  }

  get readOnly(): boolean {
    return this.#session?.notebook?.readOnly ?? false;
  }

  /** Connects to the application; returns how to let go of it. */
  start(oncommand: (command: Extract<ApplicationEvent, { kind: 'command' }>['command']) => void): () => void {
    void this.#refreshSession();
    return this.#client.subscribe((event) => {
      if (event.kind === 'notebook-changed') {
        this.#changedAt = performance.now();
        this.#refreshSoon();
      } else if (event.kind === 'draft-ended') this.#endDraft(event.name);
      else if (event.kind === 'trouble') this.#trouble = event.text;
      else if (event.kind === 'command') oncommand(event.command);
    });
  }

  async call<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<Answer<CallOutput<Name>>> {
    const plain = $state.snapshot(input) as CallInput<Name>;
    if (isReading(name)) return this.#client.call(name, plain);
    this.#writing += 1;
    // What was typed last belongs to the notebook that is open now.
    if (name === 'notebook.open' || name === 'notebook.create') this.drafts.flush();
    try {
      const answer = await this.#client.call(name, plain);
      if (answer.ok) {
        if (name !== 'undo.last') this.undo.dismiss();
        this.#changedAt = performance.now();
        this.#refreshSoon();
      }
      return answer;
    } finally {
      this.#writing -= 1;
    }
  }

  /** See `Client.handOver`. */
  handOver(file: File): Promise<Answer<{ handle: string }>> {
    return this.#client.handOver(file);
  }

  dismissTrouble(): void {
    this.#trouble = '';
  }

  /**
   * The form of that name, as it was left; what is typed in it outlives a crash.
   * @param kept `false` where nothing is entered: a search, a way of looking
   */
  form<Values extends object>(name: string, blank: () => Values, kept = true): Form<Values> {
    const known = this.#forms.get(name) as Form<Values> | undefined;
    if (known) {
      known.beginFrom(blank);
      return known;
    }
    const form = new Form(blank, this.#toOpen.delete(name));
    this.#forms.set(name, form as unknown as Form<object>);
    if (kept) {
      this.drafts.take(name, (content) => form.restore(content));
      this.#follow(name, () => form.typed);
    }
    return form;
  }

  /** Opens a form by its name, before or after its screen has made it. */
  openForm(name: string): void {
    const form = this.#forms.get(name);
    if (form) form.open = true;
    else this.#toOpen.add(name);
  }

  /** The editor of that name, as it was left until it is dropped; what is typed in it outlives a crash. Untouched, it begins anew. */
  draft<Draft extends KeptDraft>(name: string, make: () => Draft): Draft {
    // Who asks for an editor does not follow what is typed in it.
    return untrack(() => {
      const known = this.#drafts.get(name) as HeldDraft<Draft> | undefined;
      if (known?.content) return known.draft;
      const held = outliving(() => new HeldDraft(make()));
      this.#drafts.set(name, held);
      this.drafts.take(name, (content) => held.putBack(content));
      this.#follow(name, () => held.content);
      return held.draft;
    });
  }

  /** Something is typed under that name that was not entered: in this session or before a crash. */
  isBegun(name: string): boolean {
    return untrack(() => this.drafts.waits(name) || !!this.#drafts.get(name)?.content || !!this.#forms.get(name)?.typed);
  }

  /** Entered, or put down. */
  dropDraft(name: string): void {
    this.#unfollow(name);
    this.#drafts.delete(name);
    this.drafts.forget(name);
  }

  /** The bench sheet of a test; it outlives its screen, with what was typed and refused. */
  sheet(testId: string): BenchSheet {
    return found(this.#sheets, testId, () => {
      const sheet = outliving(() => new BenchSheet(this, testId));
      const name = `sheet ${testId}`;
      this.drafts.take(name, (content) => sheet.restoreTyped(content));
      this.#follow(name, () => sheet.typed);
      return sheet;
    });
  }

  async reloadSheets(): Promise<void> {
    await Promise.all([...this.#sheets.values()].map((sheet) => sheet.reload()));
  }

  /** Values typed on any bench sheet that are not in the record. */
  get unsaved(): number {
    return [...this.#sheets.values()].reduce((sum, sheet) => sum + sheet.unsaved, 0);
  }

  /** Those, and the values on their way to the record. */
  get unsent(): number {
    return [...this.#sheets.values()].reduce((sum, sheet) => sum + sheet.pending.size, 0);
  }

  /** Several events in a row, as when a column is pasted, cause one refresh. */
  #refreshSoon(): void {
    clearTimeout(this.#refreshTimer);
    this.#refreshTimer = setTimeout(() => void this.#refreshSession(), 40);
  }

  async #refreshSession(): Promise<void> {
    const answer = await this.#client.call('session.get', {});
    if (answer.ok) {
      if (this.#session?.notebook?.handle !== answer.value.notebook?.handle) {
        this.#forgetNotebook();
        await this.drafts.load(answer.value.notebook?.handle ?? '');
      }
      this.#session = answer.value;
      this.#startProblem = '';
      this.#revision += 1;
    } else if (this.#session) this.#trouble = answer.problem.message;
    else this.#startProblem = answer.problem.message;
  }

  #follow(name: string, typed: () => object | null): void {
    this.#unfollow(name);
    let stop: (() => void) | null = null;
    let stopped = false;
    this.#following[name] = () => {
      stopped = true;
      stop?.();
    };
    // In a task of its own: an effect that belongs to a screen is lost when the screen goes in the moment of the change.
    queueMicrotask(() => {
      if (stopped) return;
      stop = $effect.root(() => {
        $effect(() => this.drafts.note(name, typed()));
      });
    });
  }

  #unfollow(name: string): void {
    this.#following[name]?.();
    delete this.#following[name];
  }

  /** Another window entered it or put it down: here it goes as well, unless something else was typed since. */
  #endDraft(name: string): void {
    const content = this.drafts.ended(name);
    if (content === null) return;
    const [form, sheet] = [this.#forms.get(name), this.#sheets.get(name.replace(/^sheet /, ''))];
    if (form && JSON.stringify(form.typed) === content) form.clear();
    else if (sheet && JSON.stringify(sheet.typed) === content) sheet.forgetTyped();
    else if (JSON.stringify(this.#drafts.get(name)?.content ?? null) === content) this.dropDraft(name);
  }

  #forgetNotebook(): void {
    for (const stop of Object.values(this.#following)) stop();
    this.#following = {};
    this.#forms.clear();
    this.#drafts.clear();
    this.#sheets.clear();
  }
}

function found<Value>(kept: Map<string, Value>, name: string, make: () => Value): Value {
  const value = kept.get(name) ?? make();
  if (!kept.has(name)) kept.set(name, value);
  return value;
}

/** Derived values stop with the screen in which they were made; what is kept for longer needs a root of its own. */
function outliving<Value>(make: () => Value): Value {
  let value!: Value;
  $effect.root(() => {
    value = make();
  });
  return value;
}

export const [appState, setAppState] = createContext<AppState>();
