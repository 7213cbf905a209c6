import { formatNumber, plainDecimals } from '../../shared-lib/quantity/format.ts';
import type { Axis, Figure, FigurePoint } from '../../shared-lib/figure/figure.ts';

export interface FigureRow {
  series: string;
  x: string;
  y: string;
}

const mostRows = 200;

/** The points of a figure as the rows of a table; a long trace is cut, and `left` says by how many points. */
export function figureRows(figure: Figure): { shown: FigureRow[]; left: number } {
  const rows = figure.series.flatMap((series) =>
    series.points.map((point) => ({ series: series.name, x: positionText(figure.x, point.x), y: valueText(point) })),
  );
  return { shown: rows.slice(0, mostRows), left: Math.max(0, rows.length - mostRows) };
}

function positionText(axis: Axis, x: number): string {
  return axis.scale === 'category' ? (axis.categories?.[x] ?? String(x)) : shortNumber(x);
}

function valueText(point: FigurePoint): string {
  if (point.y === null) return '—';
  const sign = point.open === 'up' ? '≥ ' : point.open === 'down' ? '≤ ' : '';
  const range = point.low !== undefined && point.high !== undefined ? ` (${shortNumber(point.low)} to ${shortNumber(point.high)})` : '';
  return `${sign}${shortNumber(point.y)}${range}`;
}

function shortNumber(value: number): string {
  return formatNumber(value, plainDecimals(value));
}
