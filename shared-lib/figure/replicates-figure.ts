import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from './figure.ts';
import { formatWithInterval } from '../quantity/format.ts';

/** The single values behind a mean, side by side; the dots of its strip. */
export function replicatesFigure(id: string, title: string, unit: string, values: readonly number[], mean: ResultValue, labels: readonly string[] = []): Figure {
  return {
    id,
    title,
    finding: `${title}: ${formatWithInterval(mean)}, n = ${values.length}.`,
    x: { title: 'Reading', scale: 'category', categories: values.map((_, index) => labels[index] ?? `${index + 1}`) },
    y: { title, ...(unit === '' ? {} : { unit }), scale: 'linear' },
    series: [{ name: 'readings', kind: 'points', role: 'reading', points: values.map((y, x) => ({ x, y })) }],
  };
}
