import type { Figure, FigurePoint } from '../../figure/figure.ts';
import { formatValue } from '../../quantity/format.ts';
import type { PropertyOutcome } from './property-outcome.ts';
import type { ReadingColumn } from './reading-column.ts';

/** Id of the figure that holds the single values of a property. */
export function readingsFigureId(property: string): string {
  return `${property}-readings`;
}

/** The single values behind a statistic, side by side; the dots of its strip. */
export function readingsFigure(property: string, title: string, unit: string, column: ReadingColumn, { result, values }: PropertyOutcome): Figure {
  const { text, intervalText } = formatValue(result);
  const grades = column.kind === 'grade' ? column.grades.map(({ grade }) => grade) : null;
  const pointsOf = (doubtful: boolean): FigurePoint[] =>
    values.flatMap((one, x) => (one.doubtful === doubtful ? [{ x, y: one.value, ...(one.orMore && { open: 'up' as const }) }] : []));
  const doubtful = pointsOf(true);
  return {
    id: readingsFigureId(property),
    title,
    finding: `${title}: ${text}${intervalText && ` (${intervalText})`}, n = ${result.n}.`,
    x: { title: 'Reading', scale: 'category', categories: values.map(({ index }) => String(index + 1)) },
    y: { title, ...(unit && { unit }), scale: 'linear', ...(grades && { min: grades[0]!, max: grades.at(-1)! }) },
    series: [
      { name: 'readings', kind: 'points', role: 'reading', points: pointsOf(false) },
      ...(doubtful.length > 0 ? [{ name: 'doubtful', kind: 'points' as const, role: 'doubtful' as const, points: doubtful }] : []),
    ],
  };
}
