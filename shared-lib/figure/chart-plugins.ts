import type { Chart, ChartArea, Plugin } from 'chart.js';
import { scalesOf } from './chart-scale.ts';
import { namePoints } from './point-names.ts';
import { lineColour, nameReferenceLines } from './reference-names.ts';
import type { Figure, FigurePoint, ReferenceLine } from './figure.ts';
import type { SeriesLook } from './series-look.ts';
import type { FigureTheme } from './theme.ts';

/**
 * What Chart.js does not draw by itself: interval bands and reference lines under the data, error bars and open arrows
 * on it, names of reference lines and points above it. They draw through the chart's own context only.
 */
export function figurePlugins(figure: Figure, looks: SeriesLook[], theme: FigureTheme): Plugin[] {
  return [
    {
      id: 'figureGround',
      beforeDatasetsDraw(chart) {
        drawBands(chart, figure, theme);
        for (const line of figure.lines ?? []) drawReferenceLine(chart, line, theme);
        drawErrors(chart, figure, looks, theme, (kind) => kind !== 'bars');
      },
      afterDatasetsDraw(chart) {
        drawErrors(chart, figure, looks, theme, (kind) => kind === 'bars');
        nameReferenceLines(chart, figure, theme);
        namePoints(chart, figure, theme);
      },
    },
  ];
}

function drawBands(chart: Chart, figure: Figure, theme: FigureTheme): void {
  const { x, y } = scalesOf(chart);
  for (const band of figure.bands ?? []) {
    if (band.points.length < 2) continue;
    clipped(chart, (ctx) => {
      const yOf = (value: number) => pixelInside(y.getPixelForValue(value), chart.chartArea);
      ctx.beginPath();
      for (const point of band.points) ctx.lineTo(x.getPixelForValue(point.x), yOf(point.high));
      for (const point of band.points.toReversed()) ctx.lineTo(x.getPixelForValue(point.x), yOf(point.low));
      ctx.closePath();
      ctx.fillStyle = theme.band;
      ctx.fill();
    });
  }
}

function drawReferenceLine(chart: Chart, line: ReferenceLine, theme: FigureTheme): void {
  const { left, right, top, bottom } = chart.chartArea;
  const scales = scalesOf(chart);
  const at = scales[line.axis].getPixelForValue(line.value);
  clipped(chart, (ctx) => {
    ctx.strokeStyle = lineColour(line, theme);
    ctx.lineWidth = line.role === 'limit' ? 1.3 : 1;
    ctx.setLineDash(line.role === 'limit' ? [] : line.role === 'mean' ? [5, 3] : [1.5, 2.5]);
    ctx.beginPath();
    ctx.moveTo(line.axis === 'x' ? at : left, line.axis === 'x' ? top : at);
    ctx.lineTo(line.axis === 'x' ? at : right, line.axis === 'x' ? bottom : at);
    ctx.stroke();
  });
}

function drawErrors(chart: Chart, figure: Figure, looks: SeriesLook[], theme: FigureTheme, wanted: (kind: string) => boolean): void {
  const { x, y } = scalesOf(chart);
  const data = chart.data.datasets;
  figure.series.forEach((series, index) => {
    if (!wanted(series.kind)) return;
    const marks = chart.getDatasetMeta(index).data;
    series.points.forEach((point, at) => {
      if (point.y === null || (point.low === undefined && point.high === undefined && point.open === undefined)) return;
      const datum = data[index]?.data[at];
      const plottedX = typeof datum === 'object' && datum !== null && 'x' in datum ? Number(datum.x) : point.x;
      // A bar knows its own place in the group; anything else stands at its x.
      const px = series.kind === 'bars' ? (marks[at]?.x ?? x.getPixelForValue(point.x)) : x.getPixelForValue(plottedX);
      const colour = series.kind === 'bars' ? theme.ink : looks[index]!.colour;
      drawError(chart, point, point.y, px, (value) => pixelInside(y.getPixelForValue(value), chart.chartArea), colour);
    });
  });
}

function drawError(chart: Chart, point: FigurePoint, value: number, px: number, yOf: (value: number) => number, colour: string): void {
  const { ctx } = chart;
  const cap = 3;
  ctx.save();
  ctx.strokeStyle = colour;
  ctx.lineWidth = 1.1;
  ctx.beginPath();
  for (const [end, side] of [[point.low, 'down'], [point.high, 'up']] as const) {
    if (end === undefined || point.open === side) continue;
    ctx.moveTo(px, yOf(value));
    ctx.lineTo(px, yOf(end));
    ctx.moveTo(px - cap, yOf(end));
    ctx.lineTo(px + cap, yOf(end));
  }
  if (point.open !== undefined) {
    const up = point.open === 'up' ? -1 : 1;
    const tip = yOf(value) + up * 15;
    ctx.moveTo(px, yOf(value));
    ctx.lineTo(px, tip);
    ctx.moveTo(px - cap, tip - up * 4);
    ctx.lineTo(px, tip);
    ctx.lineTo(px + cap, tip - up * 4);
  }
  ctx.stroke();
  ctx.restore();
}

function clipped(chart: Chart, draw: (ctx: Chart['ctx']) => void): void {
  const { ctx, chartArea } = chart;
  ctx.save();
  ctx.beginPath();
  ctx.rect(chartArea.left, chartArea.top, chartArea.right - chartArea.left, chartArea.bottom - chartArea.top);
  ctx.clip();
  draw(ctx);
  ctx.restore();
}

/** Ends beyond the plot (zero on a log axis) stop at its edge. */
function pixelInside(pixel: number, area: ChartArea): number {
  return Number.isFinite(pixel) ? Math.min(area.bottom, Math.max(area.top, pixel)) : area.bottom;
}
