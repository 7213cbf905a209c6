import type { ChartConfiguration, ChartDataset, LegendItem, TooltipItem } from 'chart.js';
import { axisRange, type AxisRange } from './axis-range.ts';
import { figurePlugins } from './chart-plugins.ts';
import { chartScale } from './chart-scale.ts';
import { seriesLooks, type SeriesLook } from './series-look.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import type { Figure, FigurePoint, Series } from './figure.ts';
import type { FigureTheme } from './theme.ts';

/** A point as Chart.js gets it; `y` is NaN where a line breaks. */
export interface ChartPoint {
  x: number;
  y: number;
  source: FigurePoint;
}

type ChartKind = 'scatter' | 'line' | 'bar';
export type FigureChart = ChartConfiguration<ChartKind, ChartPoint[]>;

/**
 * The Chart.js configuration of a figure, for a chart of `size` px. The caller registers Chart.js, gives it a canvas of
 * that size and sets `devicePixelRatio`. Nothing moves; the same figure always gives the same drawing.
 */
export function chartConfiguration(figure: Figure, theme: FigureTheme, size: { width: number; height: number }): FigureChart {
  const looks = seriesLooks(figure.series, theme);
  const shifts = categoryShifts(figure);
  const x = axisRange(figure, 'x');
  const y = axisRange(figure, 'y');
  const legend = legendItems(figure, looks, theme);
  const font = { family: theme.fontFamily, size: theme.fontSize };
  return {
    type: 'scatter',
    data: {
      labels: figure.x.categories,
      datasets: figure.series.map((series, index) => dataset(series, looks[index]!, theme, shifts[index]!)),
    },
    options: {
      animation: false,
      responsive: false,
      maintainAspectRatio: false,
      parsing: false,
      locale: 'en',
      font,
      color: theme.ink,
      layout: { padding: { top: 6, right: 10, bottom: 2, left: 2 } },
      interaction: { mode: 'nearest', intersect: false, axis: 'xy' },
      scales: { x: chartScale(figure.x, x, 'x', theme, size.width), y: chartScale(figure.y, y, 'y', theme, size.height) },
      plugins: {
        decimation: { enabled: mayThin(figure, x), algorithm: 'min-max' },
        title: { display: false },
        legend: {
          display: legend.length > 1,
          position: 'top',
          align: 'start',
          // Clicking must not hide readings.
          onClick: () => undefined,
          labels: {
            usePointStyle: true,
            boxWidth: theme.fontSize * 1.6,
            boxHeight: theme.fontSize * 0.55,
            padding: theme.fontSize,
            color: theme.ink,
            font,
            generateLabels: () => legend,
          },
        },
        tooltip: { displayColors: false, bodyFont: font, titleFont: font, callbacks: { title: () => '', label: (item) => pointText(item, figure) } },
      },
    },
    plugins: figurePlugins(figure, looks, theme) as FigureChart['plugins'],
  };
}

const FEW_ENOUGH_FOR_MARKERS = 40;

function dataset(series: Series, look: SeriesLook, theme: FigureTheme, shift: number): ChartDataset<ChartKind, ChartPoint[]> {
  const data = series.points.map((point) => ({ x: point.x + shift, y: point.y ?? Number.NaN, source: point }));
  const common = { label: series.name, data, borderColor: look.colour, clip: 8 };
  if (series.kind === 'bars') {
    return {
      ...common,
      type: 'bar',
      order: 3,
      backgroundColor: look.filled ? look.colour : theme.ground,
      borderWidth: 1.5,
      borderSkipped: false,
      barPercentage: 0.8,
      categoryPercentage: 0.7,
    };
  }
  const points = series.kind === 'points';
  const radius = theme.fontSize * 0.32;
  // A reference with gaps is a set of intervals: their ends are no readings.
  const intervals = series.role === 'reference' && series.points.some(({ y }) => y === null);
  const marks = points || (series.role !== 'fit' && !intervals && series.points.length <= FEW_ENOUGH_FOR_MARKERS);
  return {
    ...common,
    type: points ? 'scatter' : 'line',
    order: points ? 1 : 2,
    showLine: !points,
    stepped: series.kind === 'steps' ? 'before' : false,
    spanGaps: false,
    fill: false,
    backgroundColor: look.colour,
    borderWidth: theme.fontSize * 0.14,
    borderDash: look.dash,
    pointStyle: look.marker,
    pointRadius: marks ? radius : 0,
    pointHitRadius: 8,
    pointHoverRadius: marks ? radius * 1.4 : radius,
    pointBorderWidth: look.marker === 'crossRot' ? 1.7 : 1.1,
    pointBorderColor: look.colour,
    // An open marker says that the true value lies beyond.
    pointBackgroundColor: data.map(({ source }) => (source.open === undefined && look.marker !== 'crossRot' ? `${look.colour}d0` : theme.ground)),
  };
}

/** Series with error bars over the same categories stand side by side instead of on top of one another. */
function categoryShifts(figure: Figure): number[] {
  const withBars = figure.series.map(
    ({ kind, points }) => figure.x.scale === 'category' && kind === 'points' && points.some(({ low, high }) => low !== undefined || high !== undefined),
  );
  const count = withBars.filter(Boolean).length;
  const gap = Math.min(0.16, 0.6 / Math.max(1, count));
  let place = 0;
  return withBars.map((shifted) => (shifted && count > 1 ? (place++ - (count - 1) / 2) * gap : 0));
}

/** Chart.js thins a line by its order along x, so every line must be ordered and whole. */
function mayThin(figure: Figure, x: AxisRange): boolean {
  const lines = figure.series.filter(({ kind }) => kind === 'line' || kind === 'steps');
  return (
    x.scale === 'linear' &&
    lines.every(({ points }) => points.every((point, index) => point.y !== null && (index === 0 || point.x >= points[index - 1]!.x)))
  );
}

function legendItems(figure: Figure, looks: SeriesLook[], theme: FigureTheme): LegendItem[] {
  const series = figure.series.flatMap(({ name, kind }, index): LegendItem[] => {
    const look = looks[index]!;
    if (name === '') return [];
    const marker = kind === 'bars' ? 'rect' : kind === 'points' ? look.marker : 'line';
    return [
      {
        text: name,
        fontColor: theme.ink,
        datasetIndex: index,
        pointStyle: marker,
        strokeStyle: look.colour,
        fillStyle: kind === 'bars' && !look.filled ? theme.ground : look.colour,
        lineWidth: marker === 'line' ? 1.6 : 1.3,
        lineDash: marker === 'line' ? look.dash : [],
      },
    ];
  });
  const bands = (figure.bands ?? [])
    .filter(({ name }) => name !== '')
    .map(({ name }): LegendItem => ({ text: name, fontColor: theme.ink, pointStyle: 'rect', fillStyle: theme.band, strokeStyle: theme.band, lineWidth: 1 }));
  return [...series, ...bands];
}

function pointText(item: TooltipItem<ChartKind>, figure: Figure): string {
  const { source } = item.raw as ChartPoint;
  const series = figure.series[item.datasetIndex]!;
  const at = figure.x.scale === 'category' ? (figure.x.categories?.[source.x] ?? '') : measure(source.x, figure.x.unit);
  const more = source.open === 'up' ? ' or more' : source.open === 'down' ? ' or less' : '';
  const range = source.low !== undefined && source.high !== undefined ? ` (${plain(source.low)} to ${plain(source.high)})` : '';
  const value = source.y === null ? '' : `${measure(source.y, figure.y.unit)}${more}${range}`;
  return [series.name, source.label, `${at}: ${value}`].filter(Boolean).join(' · ');
}

function measure(value: number, unit: string | undefined): string {
  return unit ? `${plain(value)} ${unit}` : plain(value);
}

function plain(value: number): string {
  return formatNumber(value, plainDecimals(value));
}
