import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { controlLimits } from './control-limits.ts';
import type { ChartKind, ChartPart } from './control-limits.ts';
import { refuseAs } from './refuse-as.ts';
import { runSignals } from './run-rules.ts';

const input = z.strictObject({
  /** Subgroups of equal size in order of time, or single `values`. */
  subgroups: z.array(z.array(z.number()).min(1).max(25)).min(2).max(5000).optional(),
  values: z.array(z.number()).min(2).max(10_000).optional(),
  chart: z.enum(['xbar-r', 'xbar-s', 'individuals']).optional(),
  unit: z.string().max(20).default(''),
});

/** Fewer points than this give limits that move with every new one. */
const ENOUGH = 20;

/**
 * `results`: centre, lower and upper of the readings or means; rangeCentre, rangeLower, rangeUpper of the ranges
 * (individuals: moving ranges) or, for `xbar-s`, sdCentre, sdLower, sdUpper of the standard deviations.
 */
export const controlChartCalculation = defineCalculation({
  id: 'control-chart',
  version: '1',
  title: 'Control chart',
  input,
  compute: ({ subgroups, values, chart, unit }) => {
    if ((subgroups === undefined) === (values === undefined)) throw new InputError('subgroups', null, 'Give either subgroups or values, not both and not neither.');
    const groups = subgroups ?? values!.map((value) => [value]);
    const kind = chart ?? (groups.every(({ length }) => length === 1) ? 'individuals' : groups[0]!.length > 9 ? 'xbar-s' : 'xbar-r');
    const single = groups.findIndex(({ length }) => length !== 1);
    if (kind === 'individuals' && single !== -1) throw new InputError(`subgroups[${single}]`, groups[single], 'A chart of individuals takes one reading at a time; give values.');
    const odd = groups.findIndex(({ length }) => length !== groups[0]!.length);
    if (odd !== -1) throw new InputError(`subgroups[${odd}]`, groups[odd], `subgroups[${odd}] has ${groups[odd]!.length} readings; it needs ${groups[0]!.length} like the first.`);
    const limits = refuseAs('subgroups', groups.length, () => controlLimits(groups, kind));
    const { level, spread } = limits;
    const name = kind === 'xbar-s' ? 'sd' : 'range';
    const plain = (value: number) => valueWithoutInterval(value, unit, groups.length);
    const signals = runSignals(level);
    const wild = spread.points.flatMap((point, at) => (point > spread.upper ? [{ code: 'spread-beyond-limit', at: kind === 'individuals' ? at + 1 : at, text: 'scatters more than its limit' }] : []));
    const flags = [...signals, ...wild].map(({ code, at, text }): Flag => ({ code, where: `${subgroups ? 'subgroups' : 'values'}[${at}]`, text: `Point ${at + 1} ${text}; look for its cause.` }));
    return {
      results: {
        centre: plain(level.centre),
        lower: plain(level.lower),
        upper: plain(level.upper),
        [`${name}Centre`]: plain(spread.centre),
        [`${name}Lower`]: plain(spread.lower),
        [`${name}Upper`]: plain(spread.upper),
        sigma: plain(limits.sigma),
      },
      table: level.points.map((value, at) => ({ point: at + 1, value, spread: spread.points[kind === 'individuals' ? at - 1 : at] ?? null, signal: flags.filter(({ where }) => where.endsWith(`[${at}]`)).map(({ code }) => code).join(', ') || null })),
      flags,
      notes: [
        flags.length === 0 ? 'No pattern speaks against a process in control.' : `${flags.length} pattern${flags.length > 1 ? 's' : ''} that a process in control shows rarely.`,
        'Looked for: a point beyond a limit; two of three beyond two thirds of the way to the same limit; four of five beyond one third; nine on one side of the centre; six that rise or fall; fourteen that alternate.',
        ...(groups.length < ENOUGH ? [`Limits from ${groups.length} points are provisional; 20 or more are usual.`] : []),
        ...(limits.sigma === 0 ? ['The readings do not scatter within subgroups, so the limits coincide; check the resolution of the instrument.'] : []),
      ],
      figures: [chartFigure('control-chart', kind === 'individuals' ? 'Readings' : 'Subgroup means', level, flags.map(({ where }) => Number(/\[(\d+)\]$/.exec(where)![1])), unit), chartFigure('control-chart-spread', spreadTitle(kind), spread, [], unit)],
    };
  },
  columns: [
    { key: 'point', title: 'Point', decimals: 0 },
    { key: 'value', title: 'Value' },
    { key: 'spread', title: 'Spread' },
    { key: 'signal', title: 'Signal' },
  ],
  cautions: [],
  sources: ['ISO 7870-2; constants computed from the distributions of range and standard deviation', 'Patterns: L. S. Nelson, J. Qual. Technol. 16 (1984) 237'],
});

function spreadTitle(kind: ChartKind): string {
  return kind === 'individuals' ? 'Moving ranges' : kind === 'xbar-r' ? 'Ranges' : 'Standard deviations';
}

function chartFigure(id: string, title: string, { points, centre, lower, upper }: ChartPart, doubtful: number[], unit: string): Figure {
  const marked = new Set(doubtful);
  return {
    id,
    title,
    finding: `${points.length} points; ${points.filter((point) => point > upper || point < lower).length} beyond the limits.`,
    x: { title: 'Point', scale: 'linear' },
    y: { title, ...(unit && { unit }), scale: 'linear' },
    series: [
      { name: title.toLowerCase(), kind: 'line', role: 'reading', points: points.map((y, at) => ({ x: at + 1, y })) },
      ...(marked.size > 0 ? [{ name: 'signal', kind: 'points' as const, role: 'doubtful' as const, points: points.flatMap((y, at) => (marked.has(at) ? [{ x: at + 1, y }] : [])) }] : []),
    ],
    lines: [
      { name: 'centre', axis: 'y', value: centre, role: 'mean' },
      { name: 'upper', axis: 'y', value: upper, role: 'limit' },
      { name: 'lower', axis: 'y', value: lower, role: 'limit' },
    ],
  };
}
