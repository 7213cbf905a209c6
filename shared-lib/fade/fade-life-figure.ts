import type { Figure, FigurePoint } from '../figure/figure.ts';
import { formatNumber, formatValue, plainDecimals } from '../quantity/format.ts';
import { curveBand } from '../statistics/curve-fit.ts';
import type { FadeLife } from './fade-life.ts';
import type { FadeQuantity } from './fade-quantity.ts';
import type { SeriesFit } from './fit-fade-models.ts';

const curvePoints = 60;
/** An exposure to the limit farther out than this many times the readings is left off the plot. */
const farthestShown = 2.5;

/** Readings, fitted curves and limit; with a single series its interval band as well. */
export function fadeLifeFigure(quantity: FadeQuantity, result: FadeLife, limit: number | null, unit: string, level: number): Figure {
  const { model, series } = result.choice.chosen;
  const read = Math.max(...series.flatMap((one) => one.series.exposures));
  const life = result.life?.bound === 'exact' ? result.life.value : null;
  const end = life !== null && life <= farthestShown * read ? Math.max(read, life) * 1.05 : read * 1.05;
  const shown = (value: number) => value * quantity.shownFactor;
  const grid = Array.from({ length: curvePoints + 1 }, (_, index) => (end * index) / curvePoints);
  const named = (name: string, what: string) => (name === '' ? what : `${name}, ${what}`);

  const curve = ({ fit }: SeriesFit): FigurePoint[] => grid.map((x) => ({ x, y: shown(model.at(x, fit.parameters)) }));
  const band = series.length === 1 ? bandOf(quantity, result, grid, level) : [];
  return {
    id: 'fade-life',
    title: `${quantity.axisTitle} against exposure`,
    finding: finding(quantity, result, limit),
    x: { title: 'Exposure', unit, scale: 'linear', min: 0 },
    y: { title: quantity.axisTitle, unit: quantity.shownUnit, scale: 'linear' },
    series: [
      ...series.map(({ series: { name, exposures, values } }) => ({
        name: named(name, 'readings'),
        kind: 'points' as const,
        role: 'reading' as const,
        points: exposures.map((x, index) => ({ x, y: shown(values[index]!) })),
      })),
      ...series.map((one) => ({ name: named(one.series.name, model.title), kind: 'line' as const, role: 'fit' as const, points: curve(one) })),
    ],
    bands: band.length === 0 ? [] : [{ name: `${Math.round(level * 100)} % interval of the curve`, points: band }],
    lines: [
      ...(limit === null ? [] : [{ name: 'limit', axis: 'y' as const, value: shown(limit), role: 'limit' as const }]),
      ...(life !== null && life <= end ? [{ name: 'exposure to the limit', axis: 'x' as const, value: life, role: 'mark' as const }] : []),
    ],
  };
}

function bandOf(quantity: FadeQuantity, { choice }: FadeLife, grid: number[], level: number) {
  const { model, series } = choice.chosen;
  return grid.flatMap((x) => {
    const { low, high } = curveBand(series[0]!.fit, model.at, x, level);
    return low === null || high === null ? [] : [{ x, low: low * quantity.shownFactor, high: high * quantity.shownFactor }];
  });
}

function finding(quantity: FadeQuantity, { life, choice }: FadeLife, limit: number | null): string {
  const curve = `Fitted curve: ${choice.chosen.model.title}.`;
  if (limit === null || life === null) return `${quantity.axisTitle} against exposure. ${curve}`;
  const shownLimit = limit * quantity.shownFactor;
  const at = `${formatNumber(shownLimit, plainDecimals(shownLimit))}${quantity.shownUnit === '' ? '' : ` ${quantity.shownUnit}`}`;
  const { text, intervalText } = formatValue(life);
  return `${quantity.axisTitle} comes to the limit of ${at} at ${text}${intervalText === '' ? '' : ` (${intervalText})`}. ${curve}`;
}
