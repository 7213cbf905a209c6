import { z } from 'zod';
import type { Limit, Property } from '../../shared-lib/method/method.ts';
import type { BenchMethod, BenchSheet } from './bench-sheet.svelte.ts';
import type { KeptDraft } from './kept-draft.ts';
import { asTyped, readOptional } from './optional-number.ts';

const lineSchema = z.strictObject({ property: z.string(), lower: z.string(), upper: z.string(), source: z.string() });
const typedSchema = z.strictObject({ rule: z.enum(['simple', 'guarded']), reason: z.string(), lines: z.array(lineSchema) });

export interface LimitLine {
  property: Property;
  lower: string;
  upper: string;
  source: string;
}

/** The limits of a test while they are being edited. A property with neither end has no limit. */
export class LimitsDraft implements KeptDraft {
  readonly shape = typedSchema;
  lines = $state<LimitLine[]>([]);
  rule = $state<'simple' | 'guarded'>('guarded');
  reason = $state('');
  #problem = $state('');
  #reasonProblem = $state('');
  #checked = $state(false);
  #busy = $state(false);

  constructor(
    private readonly sheet: BenchSheet,
    method: BenchMethod,
  ) {
    const limits = sheet.view?.limits ?? [];
    this.rule = sheet.view?.rule ?? 'guarded';
    this.lines = method.properties
      .filter((property) => property.limited)
      .map((property) => {
        const limit = limits.find((known) => known.property === property.key);
        return { property, lower: asTyped(limit?.lower), upper: asTyped(limit?.upper), source: limit?.source ?? '' };
      });
  }

  get typed(): z.infer<typeof typedSchema> {
    const { rule, reason, lines } = this;
    return { rule, reason, lines: lines.map(({ property, ...line }) => ({ property: property.key, ...line })) };
  }

  set typed({ lines, ...fields }: z.infer<typeof typedSchema>) {
    Object.assign(this, fields);
    this.lines = this.lines.map((line) => ({ ...line, ...lines.find(({ property }) => property === line.property.key), property: line.property }));
  }

  get problem(): string {
    return this.#problem;
  }

  get reasonProblem(): string {
    return this.#reasonProblem;
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** Why an end cannot be read, or ''; said only once the person has tried to set the limits. */
  problemAt(line: LimitLine, end: 'lower' | 'upper'): string {
    if (!this.#checked) return '';
    const read = readOptional(line[end], line.property.unit);
    return 'problem' in read ? read.problem : '';
  }

  /** Sends the limits; false when something cannot be read or the application refused. */
  async save(): Promise<boolean> {
    this.#checked = true;
    const limits: Limit[] = [];
    for (const line of this.lines) {
      const lower = readOptional(line.lower, line.property.unit);
      const upper = readOptional(line.upper, line.property.unit);
      if ('problem' in lower || 'problem' in upper) return false;
      if (lower.value === null && upper.value === null) continue;
      limits.push({ property: line.property.key, lower: lower.value, upper: upper.value, source: line.source.trim() });
    }
    this.#busy = true;
    const answer = await this.sheet.setLimits({ limits, rule: this.rule, reason: this.reason.trim() });
    this.#busy = false;
    if (answer.ok) return true;
    const atReason = answer.problem.field === 'reason';
    this.#reasonProblem = atReason ? answer.problem.message : '';
    this.#problem = atReason ? '' : answer.problem.message;
    return false;
  }
}
