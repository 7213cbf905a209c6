import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import { kaplanMeier } from './kaplan-meier.ts';
import type { SurvivalCurve } from './kaplan-meier.ts';
import { levelSchema } from './level.ts';

const input = z.strictObject({
  times: z.array(z.number()).min(1).max(10_000),
  /** Whether the event was seen at the time (true, 1), or the time is only a lower bound (false, 0). */
  events: z.array(z.union([z.boolean(), z.literal(0), z.literal(1)])).min(1).max(10_000),
  unit: z.string().max(20).default(''),
  level: levelSchema,
  transform: z.enum(['log', 'log-log']).default('log-log'),
});

export const kaplanMeierCalculation = defineCalculation({
  id: 'kaplan-meier',
  version: '1',
  title: 'Share that lasts, from event times and lower bounds',
  input,
  compute: ({ times, events, unit, level, transform }) => {
    if (events.length !== times.length) {
      throw new InputError('events', events.length, `events needs one mark per time: ${times.length}, not ${events.length}.`);
    }
    const curve = kaplanMeier(times, events.map(Boolean), level, transform);
    const median = medianResult(curve, unit, level, times.length);
    const notes: string[] = [];
    if (curve.median.value === null) notes.push('Fewer than half had the event while they were watched, so the median lies beyond the last time.');
    else if (curve.median.high === null) notes.push('The interval of the median has no upper end within the times watched.');
    if (curve.rows.some(({ low }) => low === null)) notes.push('Before the first event and once none is left the share has no interval.');
    return {
      results: { median },
      table: curve.rows.map((row) => ({ ...row })),
      notes,
      figures: [figureOf(curve, unit, level, median)],
    };
  },
  columns: [
    { key: 'time', title: 'Time' },
    { key: 'atRisk', title: 'At risk', decimals: 0 },
    { key: 'events', title: 'Events', decimals: 0 },
    { key: 'survival', title: 'Share without event', decimals: 3 },
    { key: 'low', title: 'Low', decimals: 3 },
    { key: 'high', title: 'High', decimals: 3 },
  ],
  cautions: [],
  sources: [
    'E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958) 457; variance by Greenwood’s formula',
    'Interval of the median: R. Brookmeyer, J. Crowley, Biometrics 38 (1982) 29',
  ],
});

function medianResult({ rows, median }: SurvivalCurve, unit: string, level: number, n: number): ResultValue {
  const { value, low, high } = median;
  const interval = { low, high, level: low === null && high === null ? null : level };
  if (value !== null) return { value, unit, n, bound: 'exact', ...interval };
  return { value: rows.at(-1)!.time, unit, n, bound: 'at-least', ...interval };
}

function figureOf({ rows }: SurvivalCurve, unit: string, level: number, median: ResultValue): Figure {
  const start = { x: Math.min(0, rows[0]!.time), y: 1 };
  const known = rows.filter((row) => row.low !== null && row.high !== null);
  const sign = median.bound === 'at-least' ? 'beyond ' : '';
  const shown = `${sign}${formatNumber(median.value!, plainDecimals(median.value!))}${unit && ` ${unit}`}`;
  return {
    id: 'survival',
    title: 'Share without event',
    finding: `The median of ${median.n} readings is ${shown}.`,
    x: { title: 'Time', unit, scale: 'linear' },
    y: { title: 'Share without event', scale: 'linear', min: 0, max: 1 },
    series: [{ name: 'share without event', kind: 'steps', role: 'fit', points: [start, ...rows.map(({ time, survival }) => ({ x: time, y: survival }))] }],
    bands: [{ name: `${Number((level * 100).toPrecision(6))} % interval`, points: known.map(({ time, low, high }) => ({ x: time, low: low!, high: high! })) }],
    lines: [{ name: 'half', axis: 'y', value: 0.5, role: 'mark' }],
  };
}
