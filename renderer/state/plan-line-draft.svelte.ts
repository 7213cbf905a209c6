import { z } from 'zod';
import type { Limit, MethodData, Property } from '../../shared-lib/method/method.ts';
import { momentSchema, type Moment, type PlanLine } from '../../shared-lib/plan/plan.ts';
import { readDecimal } from '../../shared-lib/quantity/decimal.ts';
import type { KeptDraft } from './kept-draft.ts';
import { asTyped, readOptional } from './optional-number.ts';

const limitSchema = z.strictObject({ property: z.string(), lower: z.string(), upper: z.string(), source: z.string() });
const typedSchema = z.strictObject({
  from: momentSchema.shape.from,
  hours: z.string(),
  preparation: z.string(),
  replicates: z.string(),
  why: z.string(),
  limits: z.array(limitSchema),
});

interface LimitLine {
  property: Property;
  lower: string;
  upper: string;
  source: string;
}

/** One test of a plan while it is changed, as typed. */
export class PlanLineDraft implements KeptDraft {
  readonly shape = typedSchema;
  from = $state<Moment['from']>('printing');
  hours = $state('');
  preparation = $state('');
  replicates = $state('');
  why = $state('');
  limits = $state<LimitLine[]>([]);
  #checked = $state(false);

  constructor(
    private readonly line: PlanLine,
    /** The lab's own, whose reason it writes itself. */
    readonly own: boolean,
    private readonly method: Pick<MethodData, 'properties' | 'readings'>,
  ) {
    this.from = line.moment.from;
    this.hours = String(line.moment.hours);
    this.preparation = line.preparation;
    this.replicates = String(line.replicates);
    this.why = line.reasons[0]?.text ?? '';
    this.limits = method.properties
      .filter(({ limited, headline, key }) => limited && (headline || line.limits.some(({ property }) => property === key)))
      .map((property) => {
        const limit = line.limits.find((known) => known.property === property.key);
        return { property, lower: asTyped(limit?.lower), upper: asTyped(limit?.upper), source: limit?.source ?? '' };
      });
  }

  get typed(): z.infer<typeof typedSchema> {
    const { from, hours, preparation, replicates, why, limits } = this;
    return { from, hours, preparation, replicates, why, limits: limits.map(({ property, ...limit }) => ({ property: property.key, ...limit })) };
  }

  set typed({ limits, ...fields }: z.infer<typeof typedSchema>) {
    Object.assign(this, fields);
    this.limits = this.limits.map((limit) => ({ ...limit, ...limits.find(({ property }) => property === limit.property.key), property: limit.property }));
  }

  /** The sentence beside a field that cannot be read; said only once the person has tried to take the line. */
  problemAt(field: 'hours' | 'replicates' | 'why'): string {
    if (!this.#checked) return '';
    if (field === 'why') return this.own && this.why.trim() === '' ? 'Say in one sentence why it is tested.' : '';
    if (field === 'hours') return this.from === 'film' || this.#numberIn(this.hours, 0, 100_000) !== null ? '' : 'This is a number of hours from 0 on.';
    const { minRows, maxRows } = this.method.readings;
    return this.#rows() === null ? `This is a whole number from ${minRows} to ${Math.min(maxRows, 1000)}.` : '';
  }

  problemAtLimit(limit: LimitLine, end: 'lower' | 'upper'): string {
    if (!this.#checked) return '';
    const read = readOptional(limit[end], limit.property.unit);
    return 'problem' in read ? read.problem : '';
  }

  /** The line as it was typed; `null` when something of it cannot be read. */
  read(): PlanLine | null {
    this.#checked = true;
    const limits = this.#readLimits();
    const replicates = this.#rows();
    const hours = this.from === 'film' ? 0 : this.#numberIn(this.hours, 0, 100_000);
    if (limits === null || replicates === null || hours === null || (this.own && this.why.trim() === '')) return null;
    const reasons = this.own ? [{ stress: '', text: this.why.trim() }] : this.line.reasons;
    return { ...this.line, moment: { from: this.from, hours }, preparation: this.preparation.trim(), replicates, limits, reasons };
  }

  #readLimits(): Limit[] | null {
    const limits: Limit[] = [];
    for (const { property, source, ...ends } of this.limits) {
      const [lower, upper] = [readOptional(ends.lower, property.unit), readOptional(ends.upper, property.unit)];
      if ('problem' in lower || 'problem' in upper) return null;
      if (lower.value !== null || upper.value !== null) limits.push({ property: property.key, lower: lower.value, upper: upper.value, source: source.trim() });
    }
    return limits;
  }

  #rows(): number | null {
    const { minRows, maxRows } = this.method.readings;
    const rows = this.#numberIn(this.replicates, minRows, Math.min(maxRows, 1000));
    return rows !== null && Number.isInteger(rows) ? rows : null;
  }

  #numberIn(typed: string, low: number, high: number): number | null {
    const read = readDecimal(typed);
    return 'problem' in read || read.value < low || read.value > high ? null : read.value;
  }
}
