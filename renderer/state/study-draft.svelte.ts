import { SvelteMap } from 'svelte/reactivity';
import { z } from 'zod';
import type { CallProblem } from '../../shared-lib/api.ts';
import type { StudyReading } from '../../shared-lib/notebook/trial-entries.ts';
import type { StudyView } from '../../shared-lib/notebook/trial-views.ts';
import { readDecimal } from '../../shared-lib/quantity/decimal.ts';
import type { AppState } from './app-state.svelte.ts';
import type { KeptDraft } from './kept-draft.ts';

const typedSchema = z.strictObject({
  property: z.string(),
  parts: z.string(),
  appraisers: z.string(),
  trials: z.string(),
  remark: z.string(),
  cells: z.record(z.string(), z.string()),
});

export interface StudyColumn {
  key: string;
  appraiser: string;
  /** Which of this person's readings of the part: '1', '2' … */
  trial: string;
}

/** A measurement study while its readings are being typed: parts down, each person's readings across. */
export class StudyDraft implements KeptDraft {
  readonly shape = typedSchema;
  property = $state('');
  parts = $state('10');
  appraisers = $state('');
  trials = $state('3');
  remark = $state('');
  /** What was typed, by part and column. */
  readonly cells = new SvelteMap<string, string>();
  #problem = $state.raw<CallProblem | null>(null);
  #checked = $state(false);
  #busy = $state(false);

  constructor(
    private readonly app: Pick<AppState, 'call'>,
    private readonly methodId: string,
    property: string,
    appraisers: string[],
  ) {
    this.property = property;
    this.appraisers = appraisers.join(', ');
  }

  get typed(): z.infer<typeof typedSchema> {
    const { property, parts, appraisers, trials, remark, cells } = this;
    return { property, parts, appraisers, trials, remark, cells: Object.fromEntries([...cells].filter(([, typed]) => typed !== '')) };
  }

  set typed({ cells, ...fields }: z.infer<typeof typedSchema>) {
    Object.assign(this, fields);
    this.cells.clear();
    for (const [place, typed] of Object.entries(cells)) this.cells.set(place, typed);
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** A number of parts, or their names. */
  readonly partNames: string[] = $derived.by(() => namesOr(this.parts, 60));

  readonly columns: StudyColumn[] = $derived.by(() => {
    const trials = namesOr(this.trials, 10);
    return namesIn(this.appraisers)
      .slice(0, 12)
      .flatMap((appraiser) => trials.map((trial) => ({ key: `${appraiser}\n${trial}`, appraiser, trial })));
  });

  at(part: string, column: StudyColumn): string {
    return this.cells.get(placeOf(part, column)) ?? '';
  }

  enter(part: string, column: StudyColumn, typed: string): void {
    this.cells.set(placeOf(part, column), typed);
  }

  /** A copied block fills down and right from a cell; what lies beyond the grid is left out. */
  paste(part: string, column: StudyColumn, pasted: string): void {
    const top = this.partNames.indexOf(part);
    const left = this.columns.indexOf(column);
    const lines = pasted.replace(/\r?\n$/, '').split(/\r?\n/);
    lines.forEach((line, down) =>
      line.split('\t').forEach((cell, right) => {
        const place = { part: this.partNames[top + down], column: this.columns[left + right] };
        if (place.part !== undefined && place.column) this.enter(place.part, place.column, cell.trim());
      }),
    );
  }

  /** Why a cell cannot be read, or ''; said only once the person has tried to record. */
  problemAt(part: string, column: StudyColumn): string {
    const typed = this.at(part, column);
    if (!this.#checked || typed.trim() === '') return '';
    const read = readDecimal(typed);
    return 'problem' in read ? read.problem : '';
  }

  get problem(): string {
    return this.#problem?.message ?? '';
  }

  /** Takes out what was typed; parts, people and property stay. */
  clear(): void {
    this.cells.clear();
    this.remark = '';
    this.#problem = null;
    this.#checked = false;
  }

  /** Records it; `null` when a cell cannot be read or the application refused. Empty cells are left out: the study says what it makes of them. */
  async record(): Promise<StudyView | null> {
    this.#checked = true;
    const readings: StudyReading[] = [];
    for (const part of this.partNames) {
      for (const column of this.columns) {
        const typed = this.at(part, column);
        if (typed.trim() === '') continue;
        const read = readDecimal(typed);
        if ('problem' in read) {
          this.#problem = { code: 'input', field: 'readings', value: typed, message: `Part ${part}, ${column.appraiser}, reading ${column.trial}: ${read.problem}` };
          return null;
        }
        readings.push({ part, appraiser: column.appraiser, trial: column.trial, value: read.value });
      }
    }
    this.#busy = true;
    const answer = await this.app.call('study.record', { methodId: this.methodId, property: this.property, readings, remark: this.remark.trim() });
    this.#busy = false;
    this.#problem = answer.ok ? null : answer.problem;
    return answer.ok ? answer.value : null;
  }
}

function placeOf(part: string, column: StudyColumn): string {
  return `${part}\n${column.key}`;
}

/** '3' → 1, 2, 3; anything else is a list of names. */
function namesOr(typed: string, most: number): string[] {
  const count = /^\d+$/.test(typed.trim()) ? Math.min(Number(typed), most) : null;
  return count === null ? namesIn(typed).slice(0, most) : Array.from({ length: count }, (_, index) => String(index + 1));
}

function namesIn(typed: string): string[] {
  return [...new Set(typed.split(/[,;]/).map((name) => name.trim()).filter(Boolean))];
}
