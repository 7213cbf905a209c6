import type { Chart } from 'chart.js';
import { scalesOf } from './chart-scale.ts';
import type { Figure } from './figure.ts';
import type { FigureTheme } from './theme.ts';

interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
}

const GAP = 5;

/** The names of the points of a series that asks for it, beside them: in the corner that is free, else in none. */
export function namePoints(chart: Chart, figure: Figure, theme: FigureTheme): void {
  const { ctx, chartArea } = chart;
  const { x, y } = scalesOf(chart);
  const named = figure.series.flatMap((series) => (series.named ? series.points : [])).filter(({ y: value, label }) => value !== null && label);
  const places = named.map((point) => ({ px: x.getPixelForValue(point.x), py: y.getPixelForValue(point.y!), label: point.label! }));
  const taken: Box[] = places.map(({ px, py }) => ({ left: px - 3, top: py - 3, width: 6, height: 6 }));
  const height = theme.fontSize * 0.9;
  ctx.save();
  ctx.font = `${height}px ${theme.fontFamily}`;
  ctx.fillStyle = theme.ink;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'top';
  for (const { px, py, label } of places) {
    const { width } = ctx.measureText(label);
    const corners = [[px + GAP, py - GAP - height], [px + GAP, py + GAP], [px - GAP - width, py - GAP - height], [px - GAP - width, py + GAP]] as const;
    const box = corners.map(([left, top]) => ({ left, top, width, height })).find((candidate) => fits(candidate, chartArea) && !taken.some((other) => overlap(candidate, other)));
    if (!box) continue;
    taken.push(box);
    ctx.fillText(label, box.left, box.top);
  }
  ctx.restore();
}

function fits({ left, top, width, height }: Box, area: Chart['chartArea']): boolean {
  return left >= area.left && left + width <= area.right && top >= area.top && top + height <= area.bottom;
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;
}
