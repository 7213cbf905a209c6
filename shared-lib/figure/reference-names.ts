import type { Chart } from 'chart.js';
import { scalesOf } from './chart-scale.ts';
import type { Figure, ReferenceLine } from './figure.ts';
import type { FigureTheme } from './theme.ts';

interface Spot {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** Writes each reference line's name beside it, where it covers the fewest readings and no other name. */
export function nameReferenceLines(chart: Chart, figure: Figure, theme: FigureTheme): void {
  const { ctx } = chart;
  const size = theme.fontSize * 0.92;
  const height = size * 1.25;
  const points = plottedPoints(chart, figure);
  const taken: Spot[] = [];
  ctx.save();
  ctx.font = `${size}px ${theme.fontFamily}`;
  ctx.textBaseline = 'top';
  ctx.textAlign = 'left';
  for (const line of figure.lines ?? []) {
    const spot = bestSpot(candidates(chart, line, ctx.measureText(line.name).width, height), points, taken);
    taken.push(spot);
    ctx.globalAlpha = 0.75;
    ctx.fillStyle = theme.ground;
    ctx.fillRect(spot.left - 1, spot.top, spot.width + 2, height);
    ctx.globalAlpha = 1;
    ctx.fillStyle = lineColour(line, theme);
    ctx.fillText(line.name, spot.left, spot.top + height * 0.1);
  }
  ctx.restore();
}

export function lineColour(line: ReferenceLine, theme: FigureTheme): string {
  return line.role === 'limit' ? theme.limit : line.role === 'mean' ? theme.accent : theme.quiet;
}

/** In order of preference; all inside the plot. */
function candidates(chart: Chart, line: ReferenceLine, width: number, height: number): Spot[] {
  const { left, right, top, bottom } = chart.chartArea;
  const at = scalesOf(chart)[line.axis].getPixelForValue(line.value);
  const spots =
    line.axis === 'y'
      ? [right - width - 3, left + 4, (left + right - width) / 2].flatMap((x) => [at - height - 1, at + 1.5].map((y) => ({ left: x, top: y })))
      : [top + 1, bottom - height - 2, top + 1 + height, (top + bottom) / 2].flatMap((y) => [at + 3, at - width - 3].map((x) => ({ left: x, top: y })));
  const inside = spots.filter((spot) => spot.left >= left && spot.left + width <= right && spot.top >= top && spot.top + height <= bottom);
  return (inside.length > 0 ? inside : spots).map((spot) => ({ ...spot, width, height }));
}

function bestSpot(spots: Spot[], points: [number, number][], taken: Spot[]): Spot {
  let best = spots[0]!;
  let least = Infinity;
  for (const spot of spots) {
    const covered = points.filter(([x, y]) => x > spot.left - 4 && x < spot.left + spot.width + 4 && y > spot.top - 4 && y < spot.top + spot.height + 4).length;
    const names = taken.filter((other) => overlap(spot, other)).length;
    const cost = covered + 1000 * names;
    if (cost < least) [best, least] = [spot, cost];
  }
  return best;
}

function overlap(a: Spot, b: Spot): boolean {
  return a.left < b.left + b.width + 3 && b.left < a.left + a.width + 3 && a.top < b.top + b.height && b.top < a.top + a.height;
}

/** Readings with the ends of their error bars, and a fair sample of long lines, in pixels. */
function plottedPoints(chart: Chart, figure: Figure): [number, number][] {
  const { x, y } = scalesOf(chart);
  return figure.series.flatMap(({ points }) => {
    const step = Math.max(1, Math.floor(points.length / 500));
    return points.flatMap((point, index): [number, number][] => {
      if (point.y === null || index % step !== 0) return [];
      const px = x.getPixelForValue(point.x);
      const py = y.getPixelForValue(point.y);
      const arrow: [number, number][] = point.open === undefined ? [] : [8, 15].map((length) => [px, py + (point.open === 'up' ? -length : length)]);
      const ends = [point.low, point.high].flatMap((value): [number, number][] => (value === undefined ? [] : [[px, y.getPixelForValue(value)]]));
      return [[px, py], ...ends, ...arrow];
    });
  });
}
