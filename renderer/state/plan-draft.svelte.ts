import { z } from 'zod';
import type { Answer, CallProblem } from '../../shared-lib/api.ts';
import type { MethodData } from '../../shared-lib/method/method.ts';
import type { Plan } from '../../shared-lib/notebook/plan-views.ts';
import { endUseById } from '../../shared-lib/plan/end-uses.ts';
import { droppedLineSchema, planLineSchema, type DroppedLine, type PlanContent, type PlanLine, type PlanStress } from '../../shared-lib/plan/plan.ts';
import { lineIdOf, proposeLines } from '../../shared-lib/plan/propose-lines.ts';
import { stresses } from '../../shared-lib/plan/stresses.ts';
import type { KeptDraft } from './kept-draft.ts';

const typedSchema = z.strictObject({
  title: z.string(),
  product: z.string(),
  customer: z.string(),
  note: z.string(),
  reason: z.string(),
  endUse: z.string(),
  degrees: z.record(z.string(), z.string()),
  changed: z.record(z.string(), planLineSchema),
  own: z.array(planLineSchema),
  dropped: z.array(droppedLineSchema),
});

/** A plan while it is made or changed: stresses, what follows from them, and what the lab does otherwise. */
export class PlanDraft implements KeptDraft {
  readonly shape = typedSchema;
  title = $state('');
  product = $state('');
  customer = $state('');
  note = $state('');
  reason = $state('');
  #endUse = $state('');
  /** Degree by stress; a stress that is not here is not asked for. */
  degrees = $state<Record<string, string>>({});
  /** Lines as the lab changed them, by id. */
  #changed = $state.raw<Record<string, PlanLine>>({});
  /** Lines of the lab's own, which no stress asks for. */
  #own = $state.raw<PlanLine[]>([]);
  #dropped = $state.raw<DroppedLine[]>([]);
  #problem = $state.raw<CallProblem | null>(null);
  #busy = $state(false);

  readonly stresses: PlanStress[] = $derived(stresses.filter(({ id }) => id in this.degrees).map(({ id }) => ({ stress: id, degree: this.degrees[id]! })));
  readonly #proposed: PlanLine[] = $derived(proposeLines(this.stresses));
  /** What is tested, as it stands. */
  readonly lines: PlanLine[] = $derived([
    ...this.#proposed.filter(({ lineId }) => !this.#dropped.some((dropped) => dropped.lineId === lineId)).map((line) => ({ ...line, ...this.#changed[line.lineId], reasons: line.reasons })),
    ...this.#own,
  ]);
  /** Those of the dropped lines that would still be proposed. */
  readonly dropped: DroppedLine[] = $derived(this.#dropped.filter(({ lineId }) => this.#proposed.some((line) => line.lineId === lineId)));
  readonly content: PlanContent = $derived({
    title: this.title.trim(),
    product: this.product.trim(),
    customer: this.customer.trim(),
    endUse: this.#endUse,
    stresses: this.stresses,
    lines: this.lines,
    dropped: this.dropped,
    note: this.note.trim(),
  });

  /** @param from the version that it starts from, `null` for a new plan */
  constructor(from: PlanContent | null) {
    if (!from) return;
    this.title = from.title;
    this.product = from.product;
    this.customer = from.customer;
    this.note = from.note;
    this.#endUse = from.endUse;
    this.degrees = Object.fromEntries(from.stresses.map(({ stress, degree }) => [stress, degree]));
    const proposed = proposeLines(from.stresses).map(({ lineId }) => lineId);
    this.#changed = Object.fromEntries(from.lines.filter(({ lineId }) => proposed.includes(lineId)).map((line) => [line.lineId, line]));
    this.#own = from.lines.filter(({ lineId }) => !proposed.includes(lineId));
    this.#dropped = from.dropped;
  }

  get typed(): z.infer<typeof typedSchema> {
    const { title, product, customer, note, reason, degrees } = this;
    return { title, product, customer, note, reason, endUse: this.#endUse, degrees: $state.snapshot(degrees), changed: this.#changed, own: this.#own, dropped: this.#dropped };
  }

  set typed({ endUse, changed, own, dropped, ...fields }: z.infer<typeof typedSchema>) {
    Object.assign(this, fields);
    this.#endUse = endUse;
    this.#changed = changed;
    this.#own = own;
    this.#dropped = dropped;
  }

  get busy(): boolean {
    return this.#busy;
  }

  get endUse(): string {
    return this.#endUse;
  }

  /** Begins from a built-in end use: its stresses take the place of those that were ticked. */
  set endUse(id: string) {
    this.#endUse = id;
    const use = endUseById(id);
    if (use) this.degrees = Object.fromEntries(use.stresses.map(({ stress, degree }) => [stress, degree]));
  }

  ask(stress: string, asked: boolean): void {
    if (asked) this.degrees[stress] = stresses.find(({ id }) => id === stress)?.degrees[0]?.id ?? '';
    else delete this.degrees[stress];
  }

  isChanged(line: PlanLine): boolean {
    const proposed = this.#proposed.find(({ lineId }) => lineId === line.lineId);
    return proposed !== undefined && JSON.stringify(compared(proposed)) !== JSON.stringify(compared(line));
  }

  isOwn({ lineId }: PlanLine): boolean {
    return this.#own.some((line) => line.lineId === lineId);
  }

  /** Takes a line as it was changed. */
  keep(line: PlanLine): void {
    if (this.isOwn(line)) this.#own = this.#own.map((other) => (other.lineId === line.lineId ? line : other));
    else this.#changed = { ...this.#changed, [line.lineId]: line };
  }

  /** Back to what was proposed. */
  restore({ lineId }: PlanLine): void {
    const { [lineId]: _dropped, ...others } = this.#changed;
    this.#changed = others;
  }

  /** A test of the lab's own; gives its id. */
  add(method: Pick<MethodData, 'id' | 'readings'>): string {
    const moment = { from: 'printing', hours: 24 } as const;
    const base = lineIdOf(method.id, moment, '');
    const taken = [...this.#proposed, ...this.#own].map(({ lineId }) => lineId);
    let lineId = base;
    for (let number = 2; taken.includes(lineId); number++) lineId = `${base} (${number})`;
    const replicates = method.readings.startRows;
    this.#own = [...this.#own, { lineId, methodId: method.id, moment, preparation: '', conditions: {}, replicates, limits: [], reasons: [{ stress: '', text: 'The laboratory asks for it.' }] }];
    return lineId;
  }

  drop({ lineId, methodId, moment, preparation }: PlanLine, reason: string): void {
    this.#dropped = [...this.#dropped.filter((line) => line.lineId !== lineId), { lineId, methodId, moment, preparation, reason }];
  }

  /** A test of the lab's own goes without a reason: nothing proposed it. */
  removeOwn({ lineId }: PlanLine): void {
    this.#own = this.#own.filter((line) => line.lineId !== lineId);
  }

  takeBack({ lineId }: DroppedLine): void {
    this.#dropped = this.#dropped.filter((line) => line.lineId !== lineId);
  }

  problemAt(field: string): string {
    const problem = this.#problem;
    if (!problem || problem.field !== field) return '';
    return problem.message.startsWith(`${field} `) ? `This${problem.message.slice(field.length)}` : problem.message;
  }

  /** The sentence that belongs to none of the fields, or ''. */
  get problem(): string {
    if (!this.#problem || ['content.title', 'reason'].includes(this.#problem.field)) return '';
    return this.#problem.field === 'content.lines' ? 'Tick what the print must endure, or add a test: a plan has at least one.' : this.#problem.message;
  }

  async send(ask: (content: PlanContent, reason: string) => Promise<Answer<Plan>>): Promise<Plan | null> {
    if (this.#busy) return null;
    this.#busy = true;
    const answer = await ask(this.content, this.reason.trim());
    this.#busy = false;
    this.#problem = answer.ok ? null : answer.problem;
    return answer.ok ? answer.value : null;
  }
}

/** What a person can change in a line. */
function compared({ moment, preparation, replicates, limits }: PlanLine): unknown {
  return [moment.from, moment.hours, preparation, replicates, limits.map(({ property, lower, upper, source }) => [property, lower, upper, source])];
}
