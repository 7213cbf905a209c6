import type { Figure } from '../figure/figure.ts';
import type { Censored } from './censored-normal.ts';
import type { TrialLevel } from './trial-comparison.ts';

/** Readings, level and interval of each trial side by side, the control's level as a line across. */
export function trialsFigure(
  names: string[],
  readings: readonly (readonly Censored[])[],
  levels: readonly TrialLevel[],
  { control, unit, intervalName, levelName, finding }: { control: number | null; unit: string; intervalName: string; levelName: string; finding: string },
): Figure {
  const controlLevel = control === null ? null : levels[control]!.value;
  return {
    id: 'trials',
    title: 'Trials side by side',
    finding,
    x: { title: 'Trial', scale: 'category', categories: names },
    y: { title: 'Reading', ...(unit && { unit }), scale: 'linear' },
    series: [
      { name: 'readings', kind: 'points', role: 'reading', points: readings.flatMap((group, x) => group.map((reading) => ({ x, ...pointOf(reading) }))) },
      {
        name: `${levelName} with ${intervalName}`,
        kind: 'points',
        role: 'fit',
        points: levels.flatMap(({ value, low, high }, x) => (value === null ? [] : [{ x, y: value, ...(low !== null && { low }), ...(high !== null && { high }) }])),
      },
    ],
    ...(controlLevel !== null && { lines: [{ name: names[control!]!, axis: 'y' as const, value: controlLevel, role: 'mean' as const }] }),
  };
}

function pointOf({ low, high }: Censored): { y: number; low?: number; high?: number; open?: 'up' | 'down' } {
  if (low === null) return { y: high!, open: 'down' };
  if (high === null) return { y: low, open: 'up' };
  return low === high ? { y: low } : { y: (low + high) / 2, low, high };
}
