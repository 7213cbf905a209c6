import type { Figure } from './figure.ts';

/** Figures worth drawing: one that shows a single reading and no more would repeat its number. */
export function tellingFigures(figures: readonly Figure[]): Figure[] {
  return figures.filter(({ series, bands = [] }) => bands.length > 0 || series.reduce((sum, { points }) => sum + points.length, 0) > 1);
}
