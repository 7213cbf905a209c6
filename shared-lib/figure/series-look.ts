import type { FigureTheme } from './theme.ts';
import type { Series } from './figure.ts';

/** How a series is drawn: colour, marker and dash together, so that no two are told apart by colour alone. */
export interface SeriesLook {
  colour: string;
  marker: 'circle' | 'rect' | 'triangle' | 'rectRot' | 'star' | 'crossRot';
  dash: number[];
  /** Bars: filled, or outlined only. */
  filled: boolean;
}

const MARKERS = ['circle', 'rect', 'triangle', 'rectRot', 'star'] as const;
const DASHES = [[], [6, 3], [2, 2], [8, 3, 2, 3]];

/**
 * The look of each series, in order. Within a role the n-th series takes the n-th colour, so that a fit has the colour
 * of the readings it belongs to. Doubtful readings are crosses; references are quiet and dotted.
 */
export function seriesLooks(series: readonly Series[], theme: FigureTheme): SeriesLook[] {
  const counts = { reading: 0, fit: 0, reference: 0, doubtful: 0 };
  return series.map(({ role }) => {
    const index = counts[role]++;
    const filled = index % 2 === 0;
    if (role === 'doubtful') return { colour: theme.ink, marker: 'crossRot', dash: [], filled: false };
    if (role === 'reference') return { colour: theme.quiet, marker: MARKERS[(index + 1) % MARKERS.length]!, dash: [2, 2 + index], filled: false };
    return {
      colour: theme.series[index % theme.series.length]!,
      // Shifted when the colours repeat, so that the same pair never comes back.
      marker: MARKERS[(index + Math.floor(index / theme.series.length)) % MARKERS.length]!,
      dash: DASHES[index % DASHES.length]!,
      filled,
    };
  });
}
