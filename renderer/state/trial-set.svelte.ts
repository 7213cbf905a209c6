import type { TrialSetView } from '../../shared-lib/notebook/trial-views.ts';
import type { AppState } from './app-state.svelte.ts';

/** More cells than this are worked out column by column, so that the table fills while one reads. */
const mostAtOnce = 400;

/** A trial set as it was last worked out. A late answer never replaces a newer one. */
export class TrialSet {
  #view = $state.raw<TrialSetView | null>(null);
  #problem = $state('');
  #waiting = $state(0);
  #newest = 0;

  constructor(
    private readonly app: Pick<AppState, 'call'>,
    readonly trialSetId: string,
  ) {}

  /** `null` until the first answer; its columns may still be empty (`waiting`). */
  get view(): TrialSetView | null {
    return this.#view;
  }

  get problem(): string {
    return this.#problem;
  }

  /** Columns that are still to be worked out. */
  get waiting(): number {
    return this.#waiting;
  }

  async ask(): Promise<void> {
    const number = ++this.#newest;
    const frame = await this.#get(number, []);
    if (!frame) return;
    const keys = frame.responses.map(({ key }) => key);
    this.#view ??= frame;
    if (frame.trials.length * keys.length <= mostAtOnce) {
      this.#waiting = keys.length;
      const whole = keys.length === 0 ? frame : await this.#get(number, null);
      if (!whole) return;
      this.#waiting = 0;
      this.#view = whole;
      return;
    }
    this.#view = frame;
    for (const [index, key] of keys.entries()) {
      this.#waiting = keys.length - index;
      const column = await this.#get(number, [key]);
      if (!column) return;
      this.#view = withColumn(this.#view, column, key);
    }
    this.#waiting = 0;
  }

  /** What a call that recorded something answered: shown at once, with the numbers as they were until they are worked out anew. */
  take(answered: TrialSetView): void {
    this.#newest += 1;
    const before = this.#view;
    this.#view = {
      ...answered,
      responses: answered.responses.map((response) => ({ ...response, comparison: before?.responses.find(({ key }) => key === response.key)?.comparison ?? null })),
      trials: answered.trials.map((trial) => {
        const known = before?.trials.find(({ trialId }) => trialId === trial.trialId);
        return known ? { ...trial, cells: known.cells, desirability: known.desirability } : trial;
      }),
    };
  }

  async #get(number: number, responses: string[] | null): Promise<TrialSetView | null> {
    const answer = await this.app.call('trialSet.get', { trialSetId: this.trialSetId, ...(responses && { responses }) });
    if (number !== this.#newest) return null;
    this.#problem = answer.ok ? '' : answer.problem.message;
    if (!answer.ok) this.#waiting = 0;
    return answer.ok ? answer.value : null;
  }
}

function withColumn(view: TrialSetView, column: TrialSetView, key: string): TrialSetView {
  const cells = new Map(column.trials.map((trial) => [trial.trialId, trial.cells[key]]));
  return {
    ...view,
    responses: view.responses.map((response) => column.responses.find((done) => done.key === key && response.key === key) ?? response),
    trials: view.trials.map((trial) => {
      const cell = cells.get(trial.trialId);
      return cell ? { ...trial, cells: { ...trial.cells, [key]: cell } } : trial;
    }),
  };
}
