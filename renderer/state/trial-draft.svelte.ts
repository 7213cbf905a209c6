import { z } from 'zod';
import type { CallInput, CallProblem } from '../../shared-lib/api.ts';
import type { Component, Factor } from '../../shared-lib/notebook/trial-entries.ts';
import type { TrialRow, TrialSetView } from '../../shared-lib/notebook/trial-views.ts';
import type { LotView } from '../../shared-lib/notebook/lot-view.ts';
import type { AppState } from './app-state.svelte.ts';
import type { KeptDraft } from './kept-draft.ts';
import { asTyped, readOptional } from './optional-number.ts';

const lineSchema = z.strictObject({
  name: z.string(),
  lotId: z.string(),
  materialId: z.string().nullable(),
  parts: z.string(),
  solidsPct: z.string(),
  costPerKg: z.string(),
  /** Keeps its share when the others are brought to 100 %. */
  held: z.boolean(),
});
const typedSchema = z.strictObject({
  name: z.string(),
  control: z.boolean(),
  note: z.string(),
  reason: z.string(),
  factors: z.record(z.string(), z.string()),
  lines: z.array(lineSchema),
});

export type ComponentLine = z.infer<typeof lineSchema>;

type NumberKey = 'parts' | 'solidsPct' | 'costPerKg';

/** A trial while it is being added or changed. */
export class TrialDraft implements KeptDraft {
  readonly shape = typedSchema;
  name = $state('');
  control = $state(false);
  note = $state('');
  reason = $state('');
  factors = $state<Record<string, string>>({});
  lines = $state<ComponentLine[]>([]);
  #problem = $state.raw<CallProblem | null>(null);
  #checked = $state(false);
  #busy = $state(false);

  constructor(
    private readonly app: Pick<AppState, 'call'>,
    private readonly set: TrialSetView,
    /** `null`: a new one, which begins with the components of the control. */
    readonly trial: TrialRow | null,
  ) {
    const model = trial ?? set.trials.find(({ control }) => control) ?? null;
    this.name = trial?.name ?? '';
    this.control = trial ? trial.control : set.trials.length === 0;
    this.note = trial?.note ?? '';
    this.factors = Object.fromEntries(set.factors.map(({ key }) => [key, asTyped(trial?.factors[key])]));
    this.takeComponents(model?.components ?? []);
  }

  get typed(): z.infer<typeof typedSchema> {
    const { name, control, note, reason, factors, lines } = this;
    return $state.snapshot({ name, control, note, reason, factors, lines });
  }

  set typed(typed: z.infer<typeof typedSchema>) {
    Object.assign(this, typed);
  }

  /** The factors of the set by now: one that was taken out goes, a new one is empty. */
  askFor(factors: Factor[]): void {
    this.factors = Object.fromEntries(factors.map(({ key }) => [key, this.factors[key] ?? '']));
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** Parts that can be read, added up; `null` while one cannot. */
  readonly total: number | null = $derived.by(() => {
    let sum = 0;
    for (const line of this.lines) {
      const read = readOptional(line.parts);
      if ('problem' in read) return null;
      sum += read.value ?? 0;
    }
    return sum;
  });

  takeComponents(components: Component[]): void {
    this.lines = components.map((component) => ({
      name: component.name,
      lotId: component.lotId ?? '',
      materialId: component.materialId,
      parts: asTyped(component.parts),
      solidsPct: asTyped(component.solidsPct),
      costPerKg: asTyped(component.costPerKg),
      held: false,
    }));
    if (this.lines.length === 0) this.addLine();
  }

  addLine(): void {
    this.lines.push({ name: '', lotId: '', materialId: null, parts: '', solidsPct: '', costPerKg: '', held: false });
  }

  takeLot(line: ComponentLine, lot: LotView | undefined): void {
    line.lotId = lot?.lotId ?? '';
    line.materialId = lot?.materialId ?? null;
    if (lot && line.name.trim() === '') line.name = lot.material;
  }

  /** The sentence beside a field of the form, or ''. */
  problemAt(field: string): string {
    return this.#problem?.field === field ? this.#problem.message : '';
  }

  /** The sentence about a number of a component, or ''; said only once the person has tried to send. */
  numberProblem(line: ComponentLine, key: NumberKey): string {
    if (!this.#checked) return '';
    const read = readNumber(line, key);
    return 'problem' in read ? read.problem : '';
  }

  factorProblem(factor: Factor): string {
    const read = readOptional(this.factors[factor.key] ?? '');
    return this.#checked && 'problem' in read ? read.problem : '';
  }

  /** The sentence that belongs to no field, or ''. */
  get generalProblem(): string {
    return this.#problem && !['name', 'note', 'reason'].includes(this.#problem.field) ? this.#problem.message : '';
  }

  /** Brings the shares to 100 %, those held staying as they are. */
  async rebalance(): Promise<void> {
    this.#checked = true;
    const lines = this.#written();
    const total = this.total;
    if (total === null || lines.some((line) => 'problem' in readNumber(line, 'parts'))) return;
    const components = lines.map((line) => {
      const read = readNumber(line, 'parts');
      const share = 'value' in read ? (read.value ?? 0) : 0;
      // Those that are free count by proportion alone: as percentages when some are held, which are percentages.
      return line.held ? { name: line.name.trim() || 'A component', pct: share, hold: true } : { name: line.name.trim() || 'A component', parts: share };
    });
    const answer = await this.app.call('formulation.calculate', { components });
    this.#problem = answer.ok ? null : answer.problem;
    if (!answer.ok) return;
    lines.forEach((line, index) => {
      const pct = answer.value.table[index]?.pct;
      if (typeof pct === 'number' && !line.held) line.parts = String(Number(pct.toFixed(4)));
    });
  }

  /** Sends it; `null` when something cannot be read or was refused. */
  async save(): Promise<TrialSetView | null> {
    this.#checked = true;
    const values = this.#values();
    if (!values || this.#busy) return null;
    this.#busy = true;
    const answer = this.trial
      ? await this.app.call('trial.change', { trialId: this.trial.trialId, ...values, reason: this.reason.trim() })
      : await this.app.call('trial.add', { trialSetId: this.set.trialSetId, ...values });
    this.#busy = false;
    this.#problem = answer.ok ? null : answer.problem;
    return answer.ok ? answer.value : null;
  }

  #values(): Omit<CallInput<'trial.add'>, 'trialSetId'> | null {
    const components: Component[] = [];
    for (const line of this.#written()) {
      const [parts, solidsPct, costPerKg] = [readNumber(line, 'parts'), readNumber(line, 'solidsPct'), readNumber(line, 'costPerKg')];
      if ('problem' in parts || 'problem' in solidsPct || 'problem' in costPerKg) return null;
      components.push({
        name: line.name.trim(),
        materialId: line.materialId,
        lotId: line.lotId || null,
        parts: parts.value ?? 0,
        solidsPct: solidsPct.value,
        costPerKg: costPerKg.value,
      });
    }
    const factors: Record<string, number> = {};
    for (const [key, typed] of Object.entries(this.factors)) {
      const read = readOptional(typed);
      if ('problem' in read) return null;
      if (read.value !== null) factors[key] = read.value;
    }
    return { name: this.name.trim(), control: this.control, note: this.note.trim(), components, factors };
  }

  /** Lines in which anything stands. */
  #written(): ComponentLine[] {
    return this.lines.filter((line) => [line.name, line.lotId, line.parts, line.solidsPct, line.costPerKg].some((text) => text.trim() !== ''));
  }
}

function readNumber(line: ComponentLine, key: NumberKey): { value: number | null } | { problem: string } {
  const read = readOptional(line[key]);
  if (key === 'parts' && 'value' in read && read.value === null) return { problem: 'Parts are missing; type 0 where there is none.' };
  return read;
}
