import { createContext } from 'svelte';
import type { Answer, ApplicationEvent, CallInput, CallName, CallOutput, Client } from '../../shared-lib/api.ts';
import type { SessionView } from '../../shared-lib/notebook/views.ts';
import { Appearance } from './appearance.svelte.ts';
import { BegunWork } from './begun-work.svelte.ts';
import { BenchSheet } from './bench-sheet.svelte.ts';
import { Navigation } from './navigation.svelte.ts';
import { Undo } from './undo.svelte.ts';
import { isReading } from './reading-calls.ts';

/** What all screens share: the session, the place, the way to the application and what was begun. */
export class AppState {
  readonly navigation = new Navigation();
  readonly appearance = new Appearance();
  readonly undo = new Undo(this);
  readonly begun: BegunWork;
  #client: Client;
  #session = $state.raw<SessionView | null>(null);
  #startProblem = $state('');
  #trouble = $state('');
  #reachable = $state(true);
  #writing = $state(0);
  #revision = $state(0);
  #changedAt = 0;
  #refreshTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(client: Client) {
    this.#client = client;
    this.begun = new BegunWork(client, (testId) => new BenchSheet(this, testId));
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

  /** Whether the application has answered lately, as far as is known here. */
  get reachable(): boolean {
    return this.#reachable;
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
      } else if (event.kind === 'draft-ended') this.begun.end(event.name);
      else if (event.kind === 'trouble') this.#trouble = event.text;
      else if (event.kind === 'unreachable') this.#lose(event.text);
      else if (event.kind === 'command') oncommand(event.command);
    });
  }

  async call<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<Answer<CallOutput<Name>>> {
    const plain = $state.snapshot(input) as CallInput<Name>;
    if (isReading(name)) return this.#ask(name, plain);
    this.#writing += 1;
    // What was typed last belongs to the notebook that is open now.
    if (name === 'notebook.open' || name === 'notebook.create') this.begun.keeper.flush();
    try {
      const answer = await this.#ask(name, plain);
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

  async #ask<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<Answer<CallOutput<Name>>> {
    const answer = await this.#client.call(name, input);
    if (answer.ok || answer.problem.code !== 'unreachable') this.#reachable = true;
    else this.#lose(answer.problem.message);
    return answer;
  }

  #lose(text: string): void {
    if (this.#reachable) this.#trouble = text;
    this.#reachable = false;
  }

  /** Several events in a row, as when a column is pasted, cause one refresh. */
  #refreshSoon(): void {
    clearTimeout(this.#refreshTimer);
    this.#refreshTimer = setTimeout(() => void this.#refreshSession(), 40);
  }

  async #refreshSession(): Promise<void> {
    const answer = await this.#ask('session.get', {});
    if (answer.ok) {
      if (this.#session?.notebook?.handle !== answer.value.notebook?.handle) {
        await this.begun.beginAnew(answer.value.notebook?.handle ?? '');
      }
      this.#session = answer.value;
      this.#startProblem = '';
      this.#revision += 1;
    } else if (this.#session) this.#trouble = answer.problem.message;
    else this.#startProblem = answer.problem.message;
  }

}

export const [appState, setAppState] = createContext<AppState>();
