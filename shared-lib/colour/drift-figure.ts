import type { Figure } from '../figure/figure.ts';

/** One reading after another over a run, with the limit it must keep. */
export function driftFigure(id: string, title: string, values: readonly number[], labels: readonly string[], limit: number | undefined): Figure {
  const last = values.at(-1)!;
  const highest = values.reduce((at, value, index) => (value > values[at]! ? index : at), 0);
  const name = (index: number) => labels[index] ?? `${index + 1}`;
  const beyond = limit === undefined ? 0 : values.filter((value) => value > limit).length;
  const limitText = limit === undefined ? '' : ` ${beyond} of ${values.length} lie beyond the limit of ${limit}.`;
  return {
    id,
    title: `${title} over the run`,
    finding: `${title} goes from ${values[0]!.toFixed(2)} at ${name(0)} to ${last.toFixed(2)} at ${name(values.length - 1)}; the highest is ${values[highest]!.toFixed(2)} at ${name(highest)}.${limitText}`,
    x: { title: 'Reading', scale: 'category', categories: values.map((_, index) => name(index)) },
    y: { title, scale: 'linear', min: 0 },
    series: [{ name: 'readings', kind: 'line', role: 'reading', points: values.map((y, x) => ({ x, y })) }],
    ...(limit === undefined ? {} : { lines: [{ name: `limit ${limit}`, axis: 'y' as const, value: limit, role: 'limit' as const }] }),
  };
}
