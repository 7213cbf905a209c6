import type { Answer, CallProblem } from '../../shared-lib/api.ts';

/** A form that is sent as a whole. What was typed stays until the application has taken it. */
export class Form<Values extends object> {
  values = $state() as Values;
  open = $state(false);
  #problem = $state.raw<CallProblem | null>(null);
  #busy = $state(false);
  #blank: () => Values;

  constructor(blank: () => Values, open = false) {
    this.#blank = blank;
    this.values = blank();
    this.open = open;
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** The sentence that belongs beside a field, or ''. */
  problemAt(field: string): string {
    return this.#problem && belongsTo(this.#problem.field, field) ? besideField(this.#problem) : '';
  }

  /** The sentence that belongs to none of the fields, or ''. */
  get generalProblem(): string {
    const problem = this.#problem;
    if (!problem) return '';
    return Object.keys(this.values).some((field) => belongsTo(problem.field, field)) ? '' : problem.message;
  }

  /** Sends; gives what came back, or `null` when it was refused and the reason stands at the field. */
  async send<Output>(ask: (values: Values) => Promise<Answer<Output>>): Promise<Output | null> {
    if (this.#busy) return null;
    this.#busy = true;
    try {
      const answer = await ask(this.values);
      this.#problem = answer.ok ? null : answer.problem;
      return answer.ok ? answer.value : null;
    } finally {
      this.#busy = false;
    }
  }

  /** What was typed before, e.g. before a crash, opens with it. Fields that the form has no more are left out. */
  restore(typed: Partial<Values>): void {
    const blank = this.#blank();
    const known = Object.entries(typed).filter(([field]) => field in blank);
    this.values = { ...blank, ...Object.fromEntries(known) };
    this.open = true;
  }

  /** What is typed and not sent, or `null` where it stands as it began. */
  get typed(): Values | null {
    const values = $state.snapshot(this.values) as Values;
    return JSON.stringify(values) === JSON.stringify(this.#blank()) ? null : values;
  }

  clear(): void {
    this.values = this.#blank();
    this.#problem = null;
    this.open = false;
  }
}

/** Beside its field, a sentence that names the field by its key says 'This' instead. */
function besideField({ field, message }: CallProblem): string {
  return message.startsWith(`${field} `) ? `This${message.slice(field.length)}` : message;
}

function belongsTo(problemField: string, field: string): boolean {
  return problemField === field || problemField.startsWith(`${field}.`) || problemField.startsWith(`${field}[`);
}
