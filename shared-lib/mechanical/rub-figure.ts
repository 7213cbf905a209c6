import type { ResultValue } from '../calculation/result.ts';
import type { Figure, Series } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import { rubCurve } from './rub-curve.ts';
import type { RubSeries, RubSpecimen } from './rub-specimens.ts';

const CURVE_POINTS = 40;

interface Quantity {
  id: string;
  title: string;
  unit: string;
  of: (specimen: RubSpecimen) => RubSeries | null;
  limit: number | undefined;
  /** Its mean at the last strokes that all specimens share. */
  result: ResultValue;
  strokes: number | null;
}

/** A quantity against strokes, each specimen's readings and a curve through all of them; `null` where it was not read. */
export function rubFigure(specimens: readonly RubSpecimen[], { id, title, unit, of, limit, result, strokes }: Quantity): Figure | null {
  const read = specimens.flatMap((specimen) => (of(specimen) ? [{ name: specimen.name, series: of(specimen)! }] : []));
  if (read.length === 0) return null;
  const curve = rubCurve(read.map(({ series }) => series));
  const farthest = Math.max(...read.flatMap(({ series }) => series.strokes));
  const points: Series[] = read.map(({ name, series }) => ({
    name: `specimen ${name}`,
    kind: 'points',
    role: 'reading',
    points: series.strokes.map((x, index) => ({ x, y: series.values[index]! })),
  }));
  const line: Series[] = curve === null ? [] : [{
    name: `curve, ${curve.shape}`,
    kind: 'line',
    role: 'fit',
    points: Array.from({ length: CURVE_POINTS + 1 }, (_, step) => ({ x: (farthest * step) / CURVE_POINTS, y: curve.at((farthest * step) / CURVE_POINTS) })),
  }];
  return {
    id,
    title: `${title} against strokes`,
    finding: result.value === null ? `${title} of ${read.length} specimens against strokes.` : `${title} after ${strokes} strokes: ${formatValue(result).text}, n = ${result.n}.`,
    x: { title: 'Strokes', scale: 'linear', min: 0 },
    y: { title, ...(unit !== '' && { unit }), scale: 'linear' },
    series: [...points, ...line],
    lines: limit === undefined ? [] : [{ name: 'limit', axis: 'y', value: limit, role: 'limit' }],
  };
}
