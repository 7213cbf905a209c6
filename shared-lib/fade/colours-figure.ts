import type { Figure, FigurePoint, Series } from '../figure/figure.ts';
import { formatPlain, formatValue } from '../quantity/format.ts';
import { meanOf } from '../statistics/summarise.ts';
import { lifeOfColour } from './rank-colours.ts';
import type { ColourFade, FadeQuestion } from './colour-fade.ts';

/**
 * All colours of a programme in one picture: mean of the patches at each exposure with their range, and the mean of their
 * fitted curves.
 * @param ranked from the colour that fades first
 */
export function coloursFigure(ranked: readonly ColourFade[], { endpointOn, endpoint, exposureUnit }: FadeQuestion): Figure {
  const key = endpointOn === 'retention' ? 'retentionPct' : 'deltaE00';
  const limit = endpointOn === 'retention' ? endpoint.retentionPct : endpoint.deltaE00!;
  const unit = endpointOn === 'retention' ? '%' : '';
  const title = endpointOn === 'retention' ? 'Density retained' : 'Colour difference ΔE00';
  const first = lifeOfColour(ranked[0]!, exposureUnit);
  const at = `${formatPlain(limit)}${unit === '' ? '' : ` ${unit}`}`;
  return {
    id: 'fade-of-colours',
    title: `${title} of all colours against exposure`,
    finding: `Order of fading: ${ranked.map(({ name }) => name).join(', ')}.${first.value === null ? '' : ` The colour ${ranked[0]!.name} comes to the limit of ${at} first, at ${formatValue(first).text}.`}`,
    x: { title: 'Exposure', unit: exposureUnit, scale: 'linear', min: 0 },
    y: { title, ...(unit === '' ? {} : { unit }), scale: 'linear' },
    series: [
      ...ranked.map((colour): Series => ({ name: `${colour.name}, mean of the patches`, kind: 'points', role: 'reading', points: meansOf(colour, key) })),
      ...ranked.map((colour): Series => ({ name: `${colour.name}, curve`, kind: 'line', role: 'fit', points: curveOf(colour) })),
    ],
    lines: [{ name: 'limit', axis: 'y', value: limit, role: 'limit' }],
  };
}

function meansOf({ patches }: ColourFade, key: 'retentionPct' | 'deltaE00'): FigurePoint[] {
  const read = patches.flat().filter((reading) => reading[key] !== null);
  return [...new Set(read.map(({ exposure }) => exposure))].sort((a, b) => a - b).map((x) => {
    const values = read.filter(({ exposure }) => exposure === x).map((reading) => reading[key]!);
    return { x, y: meanOf(values), ...(values.length > 1 ? { low: Math.min(...values), high: Math.max(...values) } : {}) };
  });
}

/** The curves that the fade-life figure of this colour draws for each patch, over one grid of exposures. */
function curveOf({ life }: ColourFade): FigurePoint[] {
  const fits = life?.figures.flatMap(({ series }) => series.filter(({ role }) => role === 'fit')) ?? [];
  if (fits.length === 0) return [];
  return fits[0]!.points.map(({ x }, index) => ({ x, y: meanOf(fits.map(({ points }) => points[index]!.y!)) }));
}
