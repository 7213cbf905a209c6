import type { Figure, FigurePoint } from '../figure/figure.ts';
import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { TradeOffView, TrialCell } from '../notebook/trial-views.ts';
import { usefulRange } from './response-head.ts';

export interface TradeOffAxis {
  response: Response;
  property: Property;
  /** By `trialId`. */
  cells: Record<string, TrialCell>;
}

interface Place {
  name: string;
  control: boolean;
  x: TrialCell;
  y: TrialCell;
}

/**
 * Two responses against each other: each trial at its means, with its interval upwards and across. `best` are the trials
 * that no other beats in both by their means.
 */
export function tradeOff(x: TradeOffAxis, y: TradeOffAxis, trials: readonly { trialId: string; name: string; control: boolean }[]): TradeOffView {
  const places = trials.flatMap(({ trialId, name, control }): Place[] => {
    const [across, up] = [x.cells[trialId], y.cells[trialId]];
    return across?.value != null && up?.value != null ? [{ name, control, x: across, y: up }] : [];
  });
  const best = places.filter((place) => !places.some((other) => beats(other, place, x.response, y.response))).map(({ name }) => name);
  const left = trials.filter(({ name }) => !places.some((place) => place.name === name)).map(({ name }) => name);
  const text = sentence(places, best, left);
  return { text, best, figure: figure(x, y, places, best, text) };
}

/** How good a value is by its mean alone: larger is better. */
function score({ goal, target }: Response, value: number): number {
  if (goal === 'target') return -Math.abs(value - target!);
  return goal === 'higher' ? value : -value;
}

function beats(a: Place, b: Place, x: Response, y: Response): boolean {
  const across = score(x, a.x.value!) - score(x, b.x.value!);
  const up = score(y, a.y.value!) - score(y, b.y.value!);
  return across >= 0 && up >= 0 && (across > 0 || up > 0);
}

function sentence(places: Place[], best: string[], left: string[]): string {
  const without = left.length === 0 ? '' : ` Not drawn, for want of readings: ${left.join(', ')}.`;
  if (places.length === 0) return `No trial has readings in both responses.${without}`;
  if (places.length === 1) return `Only ${places[0]!.name} has readings in both responses.${without}`;
  const named = best.length === 1 ? `No trial beats ${best[0]} in both responses, by their means` : `${best.slice(0, -1).join(', ')} and ${best.at(-1)} are each beaten by no other in both responses, by their means`;
  return `${named}; where intervals overlap the order may be chance.${without}`;
}

function figure(x: TradeOffAxis, y: TradeOffAxis, places: Place[], best: string[], finding: string): Figure {
  const point = (place: Place): FigurePoint => ({
    x: place.x.value!,
    y: place.y.value!,
    label: place.name,
    ...ends(place.y),
    ...(place.y.strip?.bound === 'at-least' && { open: 'up' as const }),
    ...(place.y.strip?.bound === 'at-most' && { open: 'down' as const }),
  });
  const shown = (name: string, chosen: Place[], role: 'reading' | 'reference') => (chosen.length === 0 ? [] : [{ name, kind: 'points' as const, role, named: true, points: chosen.map(point) }]);
  const [across, up] = [usefulRange(x.response), usefulRange(y.response)];
  const limit = (axis: 'x' | 'y', value: number | null) => (value === null ? [] : [{ name: 'of use from here', axis, value, role: 'limit' as const }]);
  return {
    id: 'trade-off',
    title: `${y.property.title} against ${x.property.title}`,
    finding,
    x: axisOf(x.property),
    y: axisOf(y.property),
    series: [
      ...shown('beaten by no other in both', places.filter(({ name, control }) => best.includes(name) && !control), 'reading'),
      ...shown('other trials', places.filter(({ name, control }) => !best.includes(name) && !control), 'reading'),
      ...shown('control', places.filter(({ control }) => control), 'reference'),
      ...acrossIntervals(places),
    ],
    lines: [...limit('x', across.lower), ...limit('x', across.upper), ...limit('y', up.lower), ...limit('y', up.upper)],
  };
}

/** Error bars stand upwards only: across, the intervals are one line with gaps. */
function acrossIntervals(places: Place[]): Figure['series'] {
  const points = places.flatMap((place): FigurePoint[] => {
    const { low, high } = ends(place.x);
    const y = place.y.value!;
    return low === undefined || high === undefined ? [] : [{ x: low, y }, { x: high, y }, { x: high, y: null }];
  });
  return points.length === 0 ? [] : [{ name: 'interval across', kind: 'line', role: 'reference', points }];
}

function ends({ strip }: TrialCell): { low?: number; high?: number } {
  return strip?.low != null && strip.high != null ? { low: strip.low, high: strip.high } : {};
}

function axisOf({ title, unit }: Property): Figure['x'] {
  return { title, ...(unit && { unit }), scale: 'linear' };
}
