import { untrack } from 'svelte';
import { SvelteMap, SvelteSet } from 'svelte/reactivity';
import type { Client } from '../../shared-lib/api.ts';
import type { BenchSheet } from './bench-sheet.svelte.ts';
import { DraftKeeper } from './draft-keeper.svelte.ts';
import { Form } from './form.svelte.ts';
import { HeldDraft } from './held-draft.svelte.ts';
import type { KeptDraft } from './kept-draft.ts';

/** Forms, editors and bench sheets: what was begun on a screen stays as it was left, and what is typed there outlives a crash. */
export class BegunWork {
  readonly keeper: DraftKeeper;
  readonly #sheetOf: (testId: string) => BenchSheet;
  #forms = new SvelteMap<string, Form<object>>();
  #toOpen = new SvelteSet<string>();
  #drafts = new SvelteMap<string, HeldDraft>();
  #sheets = new SvelteMap<string, BenchSheet>();
  /** By name: stops what follows a form, an editor or a sheet to keep what is typed there. */
  #following: Record<string, () => void> = {};

  constructor(client: Client, sheetOf: (testId: string) => BenchSheet) {
    this.keeper = new DraftKeeper(client);
    this.#sheetOf = sheetOf;
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
      this.keeper.take(name, (content) => form.restore(content));
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
      this.keeper.take(name, (content) => held.putBack(content));
      this.#follow(name, () => held.content);
      return held.draft;
    });
  }

  /** Something is typed under that name that was not entered: in this session or before a crash. */
  has(name: string): boolean {
    return untrack(() => this.keeper.waits(name) || !!this.#drafts.get(name)?.content || !!this.#forms.get(name)?.typed);
  }

  /** Entered, or put down. */
  drop(name: string): void {
    this.#unfollow(name);
    this.#drafts.delete(name);
    this.keeper.forget(name);
  }

  /** The bench sheet of a test; it outlives its screen, with what was typed and refused. */
  sheet(testId: string): BenchSheet {
    return found(this.#sheets, testId, () => {
      const sheet = outliving(() => this.#sheetOf(testId));
      const name = `sheet ${testId}`;
      this.keeper.take(name, (content) => sheet.restoreTyped(content));
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
        $effect(() => this.keeper.note(name, typed()));
      });
    });
  }

  #unfollow(name: string): void {
    this.#following[name]?.();
    delete this.#following[name];
  }

  /** Another window entered it or put it down: here it goes as well, unless something else was typed since. */
  end(name: string): void {
    const content = this.keeper.ended(name);
    if (content === null) return;
    const [form, sheet] = [this.#forms.get(name), this.#sheets.get(name.replace(/^sheet /, ''))];
    if (form && JSON.stringify(form.typed) === content) form.clear();
    else if (sheet && JSON.stringify(sheet.typed) === content) sheet.forgetTyped();
    else if (JSON.stringify(this.#drafts.get(name)?.content ?? null) === content) this.drop(name);
  }

  /** Another notebook is open: what was typed in it and not entered comes back. */
  async beginAnew(notebook: string): Promise<void> {
    for (const stop of Object.values(this.#following)) stop();
    this.#following = {};
    this.#forms.clear();
    this.#drafts.clear();
    this.#sheets.clear();
    await this.keeper.load(notebook);
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
