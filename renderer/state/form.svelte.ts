import type { Answer, CallProblem } from '../../shared-lib/api.ts';
import { waitInWords } from '../../shared-lib/quantity/wait-in-words.ts';
import { Countdown } from './countdown.svelte.ts';
import { fitsAs } from './fits-as.ts';
import type { PutBack } from './held-draft.svelte.ts';

/** A form that is sent as a whole. What was typed stays until the application has taken it. */
export class Form<Values extends object> {
  values = $state() as Values;
  open = $state(false);
  #problem = $state.raw<CallProblem | null>(null);
  #busy = $state(false);
  readonly #wait = new Countdown();
  /** As it began; kept, and not asked for again, so that nothing counts as typed because something else has changed. */
  #begun = $state.raw() as Values;

  constructor(blank: () => Values, open = false) {
    this.#begun = $state.snapshot(blank()) as Values;
    this.values = this.#fresh();
    this.open = open;
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** The sentence that belongs beside a field, or ''. */
  problemAt(field: string): string {
    return this.#problem && belongsTo(this.#problem.field, field) ? besideField(this.#counted(this.#problem)) : '';
  }

  /** The sentence that belongs to none of the fields, or ''. */
  get generalProblem(): string {
    const problem = this.#problem;
    if (!problem) return '';
    return Object.keys(this.values).some((field) => belongsTo(problem.field, field)) ? '' : this.#counted(problem).message;
  }

  /** Sends; gives what came back, or `null` when it was refused and the reason stands at the field. */
  async send<Output>(ask: (values: Values) => Promise<Answer<Output>>): Promise<Output | null> {
    if (this.#busy) return null;
    this.#busy = true;
    try {
      const answer = await ask(this.values);
      this.#problem = answer.ok ? null : answer.problem;
      this.#wait.begin(this.#problem?.waitSeconds ?? 0);
      return answer.ok ? answer.value : null;
    } finally {
      this.#busy = false;
    }
  }

  /** What was typed before, e.g. before a crash, opens with it. Fields that the form has no more are left out. */
  restore(typed: unknown): PutBack {
    const values = { ...this.#fresh(), ...known(typed, this.#begun) };
    if (!fitsAs(values, this.#begun)) return 'misfit';
    this.values = values;
    this.open = true;
    return 'fits';
  }

  /** Opened again, it begins from what is so by now, e.g. after a change; what is typed stays. */
  beginFrom(blank: () => Values): void {
    const begun = $state.snapshot(blank()) as Values;
    if (JSON.stringify(begun) === JSON.stringify(this.#begun)) return;
    const untouched = this.typed === null;
    this.#begun = begun;
    if (untouched) this.values = this.#fresh();
  }

  /** What is typed and not sent, or `null` where it stands as it began. */
  get typed(): Values | null {
    const values = $state.snapshot(this.values) as Values;
    return JSON.stringify(values) === JSON.stringify(this.#begun) ? null : values;
  }

  clear(): void {
    this.values = this.#fresh();
    this.#problem = null;
    this.open = false;
  }

  /** A sentence that holds a wait says how much of it is left by now. */
  #counted(problem: CallProblem): CallProblem {
    if (!problem.waitSeconds) return problem;
    const { left } = this.#wait;
    return { ...problem, message: left > 0 ? problem.message.replace(waitInWords(problem.waitSeconds), waitInWords(left)) : 'Type it again now.' };
  }

  #fresh(): Values {
    return $state.snapshot(this.#begun) as Values;
  }
}

function known<Values extends object>(typed: unknown, begun: Values): Partial<Values> {
  if (typeof typed !== 'object' || typed === null) return {};
  return Object.fromEntries(Object.entries(typed).filter(([field]) => field in begun)) as Partial<Values>;
}

/** Beside its field, a sentence that names the field by its key says 'This' instead. */
function besideField({ field, message }: CallProblem): string {
  return message.startsWith(`${field} `) ? `This${message.slice(field.length)}` : message;
}

function belongsTo(problemField: string, field: string): boolean {
  return problemField === field || problemField.startsWith(`${field}.`) || problemField.startsWith(`${field}[`);
}
