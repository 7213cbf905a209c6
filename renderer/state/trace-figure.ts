import type { Figure } from '../../shared-lib/figure/figure.ts';
import { formatNumber, plainDecimals } from '../../shared-lib/quantity/format.ts';
import type { TracePreview } from '../../shared-lib/notebook/views.ts';

/** The thinned trace as a figure for the preview. */
export function traceFigure(name: string, preview: TracePreview): Figure {
  const { displacementMm, forceN } = preview;
  return {
    id: 'trace-preview',
    title: 'Force over displacement',
    finding: `${name}: ${preview.points} points, ${short(forceN.low)} to ${short(forceN.high)} N over ${short(displacementMm.low)} to ${short(displacementMm.high)} mm.`,
    x: { title: 'Displacement', unit: 'mm', scale: 'linear' },
    y: { title: 'Force', unit: 'N', scale: 'linear' },
    series: [{ name: 'Force', kind: 'line', role: 'fit', points: preview.outline.map(([x, y]) => ({ x, y })) }],
  };
}

function short(value: number): string {
  return formatNumber(value, plainDecimals(value));
}
