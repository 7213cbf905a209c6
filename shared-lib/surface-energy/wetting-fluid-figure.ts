import type { ResultValue } from '../calculation/result.ts';
import type { Axis, Figure, FigurePoint, ReferenceLine } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import type { FilmPosition } from './film-position.ts';

/**
 * The brackets across the web with the interval of the mean and the required tension.
 * Positions stand at their place across the web where every one has it, else side by side.
 */
export function wettingFluidFigure(
  positions: readonly FilmPosition[],
  mean: ResultValue,
  requiredMNm: number | undefined,
): Figure {
  const placed = positions.every((position) => position.acrossMm !== null);
  const at = positions.map((position, index) => (placed ? position.acrossMm! : index));
  const points = positions.flatMap((position, index) => bracketPoint(position, at[index]!));
  return {
    id: 'brackets',
    title: 'Wetting tension across the web',
    finding: finding(positions, requiredMNm),
    x: placed ? placeAxis(at) : { title: 'Position', scale: 'category', categories: positions.map((position) => position.label) },
    y: { title: 'Wetting tension', unit: 'mN/m', scale: 'linear' },
    series: [
      { name: 'Bracket: held to retracted', kind: 'points', role: 'reading', points: points.filter((point) => !point.doubtful).map(drawn) },
      { name: 'Contradicting readings', kind: 'points', role: 'doubtful', points: points.filter((point) => point.doubtful).map(drawn) },
    ].filter((series) => series.points.length > 0) as Figure['series'],
    bands: meanBand(mean, at),
    lines: lines(mean, requiredMNm),
  };
}

type BracketPoint = FigurePoint & { doubtful: boolean };

function drawn({ doubtful: _, ...point }: BracketPoint): FigurePoint {
  return point;
}

function bracketPoint({ low, high, label, contradicts }: FilmPosition, x: number): BracketPoint[] {
  const common = { x, label, doubtful: contradicts };
  if (low !== null && high !== null) return [{ ...common, y: (low + high) / 2, low, high }];
  if (low !== null) return [{ ...common, y: low, open: 'up' }];
  if (high !== null) return [{ ...common, y: high, open: 'down' }];
  return [];
}

function placeAxis(at: number[]): Axis {
  const low = Math.min(0, ...at);
  const high = Math.max(...at);
  return { title: 'Place across the web', unit: 'mm', scale: 'linear', min: low, max: high > low ? high : low + 1 };
}

function meanBand(mean: ResultValue, at: number[]): Figure['bands'] {
  const { low, high, level } = mean;
  if (low === null || high === null) return [];
  const name = level === null ? 'Mean lies in' : `Mean, ${formatNumber(level * 100, 0)} % interval`;
  return [{ name, points: [Math.min(...at), Math.max(...at)].map((x) => ({ x, low, high })) }];
}

function lines(mean: ResultValue, requiredMNm: number | undefined): ReferenceLine[] {
  const found: ReferenceLine[] = [];
  if (mean.value !== null && mean.bound === 'exact') found.push({ name: 'Mean', axis: 'y', value: mean.value, role: 'mean' });
  if (requiredMNm !== undefined) found.push({ name: `Required ${requiredMNm} mN/m`, axis: 'y', value: requiredMNm, role: 'limit' });
  return found;
}

function finding(positions: readonly FilmPosition[], requiredMNm: number | undefined): string {
  const held = positions.map((position) => position.low).filter((low) => low !== null);
  const range =
    held.length === 0
      ? 'No fluid held at any position'
      : `The highest fluid that held lies between ${Math.min(...held)} and ${Math.max(...held)} mN/m`;
  const count = `${positions.length} ${positions.length === 1 ? 'position' : 'positions'}`;
  return `${range} over ${count}${requiredMNm === undefined ? '' : `; ${requiredMNm} mN/m is required`}.`;
}
