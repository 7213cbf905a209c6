import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from './figure.ts';
import { formatWithInterval } from '../quantity/format.ts';

/** Grades of the specimens side by side; the dots of their strip. */
export function gradesFigure(id: string, title: string, names: readonly string[], grades: readonly (number | null)[], median: ResultValue): Figure {
  return {
    id,
    title,
    finding: `Median ${formatWithInterval(median)}; n = ${median.n}.`,
    x: { title: 'Specimen', scale: 'category', categories: [...names] },
    y: { title: 'Grade', scale: 'linear', min: 0, max: 5 },
    series: [{ name: 'grades', kind: 'points', role: 'reading', points: grades.map((y, x) => ({ x, y })) }],
  };
}
