import type { FigurePoint } from '../figure/figure.ts';
import type { TraceColumns } from './trace-columns.ts';

/**
 * A trace thinned for drawing: per column of equal travel its lowest and its highest point, in their order, so that no
 * peak is lost. For drawing only, never for results. A trace that is short enough comes back whole.
 * @param most most points to return, at least 4.
 */
export function envelope({ displacementMm, forceN }: TraceColumns, most: number): FigurePoint[] {
  const count = forceN.length;
  const pointAt = (index: number): FigurePoint => ({ x: displacementMm[index]!, y: forceN[index]! });
  if (count <= most) return Array.from({ length: count }, (_, index) => pointAt(index));
  const columns = Math.floor(most / 2);
  const first = displacementMm[0]!;
  const width = (displacementMm[count - 1]! - first) / columns;
  const points: FigurePoint[] = [];
  for (let column = 0, index = 0; column < columns && index < count; column += 1) {
    const until = column === columns - 1 ? Infinity : first + (column + 1) * width;
    if (displacementMm[index]! >= until) continue;
    let lowest = index;
    let highest = index;
    for (; index < count && displacementMm[index]! < until; index += 1) {
      if (forceN[index]! < forceN[lowest]!) lowest = index;
      if (forceN[index]! >= forceN[highest]!) highest = index;
    }
    points.push(pointAt(Math.min(lowest, highest)));
    if (lowest !== highest) points.push(pointAt(Math.max(lowest, highest)));
  }
  return points;
}
