import type { Figure, FigurePoint, ReferenceLine, Series } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import type { TraceAnalysis } from './analyse-trace.ts';
import { envelope } from './envelope.ts';

const MOST_POINTS = 2000;

/** The trace with its plateau, mean and chosen peaks. Thinned to at most 2000 points, peaks kept. */
export function traceFigure(analysis: TraceAnalysis): Figure {
  const { trace, force, fromMm, toMm, peaks } = analysis;
  const series: Series[] = [{ name: 'force', kind: 'line', role: 'reading', points: envelope(trace, MOST_POINTS) }];
  if (peaks && peaks.chosen.length > 0) {
    const points: FigurePoint[] = peaks.chosen.map((index) => ({ x: trace.displacementMm[index]!, y: trace.forceN[index]! }));
    series.push({ name: 'chosen peaks', kind: 'points', role: 'fit', points });
  }
  const lines: ReferenceLine[] = [
    { name: 'plateau from', axis: 'x', value: fromMm, role: 'mark' },
    { name: 'plateau to', axis: 'x', value: toMm, role: 'mark' },
    { name: 'mean', axis: 'y', value: force.mean, role: 'mean' },
  ];
  return {
    id: 'trace',
    title: 'Peel force along the trace',
    finding: `From ${formatNumber(fromMm, 1)} to ${formatNumber(toMm, 1)} mm the mean force is ${formatNumber(force.mean, 3)} N (${formatNumber(force.minimum, 3)} to ${formatNumber(force.maximum, 3)} N).`,
    x: { title: 'Displacement', unit: 'mm', scale: 'linear' },
    y: { title: 'Force', unit: 'N', scale: 'linear' },
    series,
    lines,
  };
}

/** All traces of a test over one another, for the eye to find the odd one out. At most 2000 points altogether. */
export function overlayFigure(traces: { name: string; analysis: TraceAnalysis; doubtful: boolean }[]): Figure {
  const most = Math.max(200, Math.floor(MOST_POINTS / traces.length));
  const means = traces.map(({ analysis }) => analysis.force.mean);
  return {
    id: 'traces',
    title: 'Peel force along the traces',
    finding:
      traces.length === 1
        ? `1 trace; its mean force over the plateau is ${formatNumber(means[0]!, 3)} N.`
        : `${traces.length} traces; their mean forces over the plateau run from ${formatNumber(Math.min(...means), 3)} to ${formatNumber(Math.max(...means), 3)} N.`,
    x: { title: 'Displacement', unit: 'mm', scale: 'linear' },
    y: { title: 'Force', unit: 'N', scale: 'linear' },
    series: traces.map(({ name, analysis, doubtful }) => ({
      name,
      kind: 'line',
      role: doubtful ? 'doubtful' : 'reading',
      points: envelope(analysis.trace, most),
    })),
  };
}
