import type { Method } from '../method/method.ts';
import type { PlanLine } from './plan.ts';
import { severalOf } from '../quantity/words.ts';

/** A line by name, also beside others by the same method: 'Tape adhesion, 2 days after printing, after 24 h at 5 °C'. */
export function lineName({ title, momentText, preparation }: { title: string; momentText: string; preparation: string }): string {
  return [title, momentText, preparation].filter(Boolean).join(', ');
}

/** '3 specimens', '1 position'. */
export function replicatesText({ replicates }: Pick<PlanLine, 'replicates'>, method: Pick<Method, 'readings'> | undefined): string {
  const name = method?.readings.rowName ?? 'row';
  return replicates === 1 ? `1 ${name}` : `${replicates} ${severalOf(name)}`;
}

/** Each limit of a line in words with who sets it: 'Print retained ≥ 95 % (common practice)'. */
export function lineLimitTexts({ limits }: Pick<PlanLine, 'limits'>, method: Pick<Method, 'properties'> | undefined): string[] {
  return limits.map(({ property: key, lower, upper, source }) => {
    const property = method?.properties.find((candidate) => candidate.key === key);
    const unit = property?.unit ? ` ${property.unit}` : '';
    const shown = (end: number) => String(end).replaceAll('-', '−');
    const range = lower !== null && upper !== null ? `${shown(lower)} to ${shown(upper)}` : lower !== null ? `≥ ${shown(lower)}` : `≤ ${shown(upper ?? NaN)}`;
    return `${property?.title ?? key} ${range}${unit}${source ? ` (${source})` : ''}`;
  });
}
