import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import type { Lasting } from './least-lasting.ts';

/** How long each specimen lasted; one that was stopped before the end points on. */
export function lastingFigure(title: string, unit: string, names: readonly string[], readings: readonly Lasting[], typical: ResultValue): Figure {
  const { text, intervalText } = formatValue(typical);
  return {
    id: 'lasting',
    title,
    finding: `${title}: typically ${text}${intervalText === '' ? '' : ` (${intervalText})`}; n = ${readings.length}.`,
    x: { title: 'Specimen', scale: 'category', categories: [...names] },
    // A title that names what is counted says the unit already.
    y: { title, ...(title.toLowerCase().includes(unit) ? {} : { unit }), scale: 'linear', min: 0 },
    series: [{ name: 'specimens', kind: 'points', role: 'reading', points: readings.map(({ value, ended }, x) => ({ x, y: value, ...(!ended && { open: 'up' as const }) })) }],
  };
}
