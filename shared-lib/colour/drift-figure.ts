import type { Figure } from '../figure/figure.ts';

/** Where each reading was taken: the running length, time or count, in one unit. */
export interface RunPlaces {
  at: readonly number[];
  unit: string;
}

/** One reading after another over a run, with the limit it must keep. Without places they stand in the order of reading. */
export function driftFigure(id: string, title: string, values: readonly number[], labels: readonly string[], limit: number | undefined, run?: RunPlaces): Figure {
  const order = values.map((_, index) => index).sort((a, b) => (run ? run.at[a]! - run.at[b]! : a - b));
  const first = order[0]!;
  const last = order.at(-1)!;
  const highest = values.reduce((at, value, index) => (value > values[at]! ? index : at), 0);
  const name = (index: number) => (run ? `${run.at[index]} ${run.unit}` : (labels[index] ?? `${index + 1}`));
  const beyond = limit === undefined ? 0 : values.filter((value) => value > limit).length;
  const limitText = limit === undefined ? '' : ` ${beyond} of ${values.length} lie beyond the limit of ${limit}.`;
  return {
    id,
    title: `${title} over the run`,
    finding: `${title} goes from ${values[first]!.toFixed(2)} at ${name(first)} to ${values[last]!.toFixed(2)} at ${name(last)}; the highest is ${values[highest]!.toFixed(2)} at ${name(highest)}.${limitText}`,
    x: run ? { title: 'Run', unit: run.unit, scale: 'linear' } : { title: 'Reading', scale: 'category', categories: values.map((_, index) => name(index)) },
    y: { title, scale: 'linear', min: 0 },
    series: [{ name: 'readings', kind: 'line', role: 'reading', points: order.map((index) => ({ x: run ? run.at[index]! : index, y: values[index]! })) }],
    ...(limit === undefined ? {} : { lines: [{ name: `limit ${limit}`, axis: 'y' as const, value: limit, role: 'limit' as const }] }),
  };
}
