import type { Chart } from 'chart.js';
import type { AxisRange } from './axis-range.ts';
import type { Axis } from './figure.ts';
import type { FigureTheme } from './theme.ts';
import { tickText } from './ticks.ts';

/** Chart.js options of one axis: quiet rules, unit in the title, numbers with a true minus sign, no number at a ragged end. */
export function chartScale(axis: Axis, range: AxisRange, side: 'x' | 'y', theme: FigureTheme, length: number) {
  const font = { family: theme.fontFamily, size: theme.fontSize };
  const perTick = theme.fontSize * (side === 'x' ? 4.6 : 2.6);
  const shared = {
    display: true,
    title: { display: axis.title !== '', text: axisTitle(axis), color: theme.quiet, font },
    border: { color: theme.quiet, width: 0.8 },
    grid: { color: theme.rule, lineWidth: 0.6, drawOnChartArea: side === 'y', tickLength: 4, tickColor: theme.quiet, offset: false },
  };
  const ticks = { color: theme.quiet, font, maxTicksLimit: Math.max(2, Math.floor(length / perTick)), maxRotation: 0 };
  if (range.scale === 'category') {
    return { ...shared, type: 'category' as const, offset: true, ticks: { ...ticks, autoSkip: false, maxRotation: 50, maxTicksLimit: undefined }, labels: axis.categories };
  }
  const { min, max } = range;
  if (range.scale === 'log') {
    const decades = Math.log10(max / min);
    return { ...shared, type: 'logarithmic' as const, min, max, ticks: { ...ticks, autoSkip: decades > 6, callback: (value: number | string) => logTickText(Number(value), decades) } };
  }
  return {
    ...shared,
    type: 'linear' as const,
    min,
    max,
    ticks: {
      ...ticks,
      includeBounds: false,
      callback: (value: number | string, _index: number, all: { value: number }[]) => tickText(Number(value), all.length > 1 ? all[1]!.value - all[0]!.value : Number(value)),
    },
  };
}

function axisTitle({ title, unit }: Axis): string {
  return unit ? `${title} (${unit})` : title;
}

/** Whole decades on a long axis, 1–2–5 on a short one. */
function logTickText(value: number, decades: number): string {
  const leading = value / 10 ** Math.floor(Math.log10(value) + 1e-9);
  const shown = decades > 3 ? [1] : decades > 1.2 ? [1, 2, 5] : [1, 2, 3, 4, 5, 6, 8];
  return shown.some((digit) => Math.abs(leading - digit) < 1e-6) ? tickText(value, value) : '';
}

/** The two scales that every chart of ours has. */
export function scalesOf(chart: Chart) {
  return { x: chart.scales.x!, y: chart.scales.y! };
}
