import type { CallInput, CallName, CallOutput } from '../../shared-lib/api.ts';
import type { AppState } from './app-state.svelte.ts';

const pauseMs = 250;

/** The latest answer to a call that a screen repeats as its input or the notebook changes. A late answer never replaces a newer one. */
export class Asked<Name extends CallName> {
  #answered = $state.raw<{ input: CallInput<Name>; value: CallOutput<Name> } | null>(null);
  #problem = $state('');
  #newest = 0;

  constructor(
    private readonly app: AppState,
    private readonly name: Name,
  ) {}

  /** `null` until the first answer. */
  get value(): CallOutput<Name> | null {
    return this.#answered?.value ?? null;
  }

  /** What `value` is the answer to; the latest input may be on its way still. */
  get answeredInput(): CallInput<Name> | null {
    return this.#answered?.input ?? null;
  }

  get problem(): string {
    return this.#problem;
  }

  /** Asks once the input has stood still for a moment, for what is costly and follows typing; returns how to call it off. */
  askSoon(input: CallInput<Name>): () => void {
    const timer = setTimeout(() => void this.ask(input), pauseMs);
    return () => clearTimeout(timer);
  }

  async ask(input: CallInput<Name>): Promise<void> {
    const number = ++this.#newest;
    const answer = await this.app.call(this.name, input);
    if (number !== this.#newest) return;
    this.#problem = answer.ok ? '' : answer.problem.message;
    if (answer.ok) this.#answered = { input, value: answer.value };
  }
}
