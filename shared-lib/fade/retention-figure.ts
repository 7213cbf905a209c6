import type { Figure } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import type { LastExposure } from './at-last-exposure.ts';

/** Retention of each patch at the last exposure; `null` where no density was read there. */
export function retentionFigure({ exposure, readings, results }: LastExposure, exposureUnit: string): Figure | null {
  const read = readings.filter((reading) => reading.retentionPct !== null);
  if (read.length === 0) return null;
  const { text, intervalText } = formatValue(results.retentionPct);
  return {
    id: 'retention-at-last-exposure',
    title: 'Retention at the last exposure',
    finding: `After ${exposure} ${exposureUnit} ${text} of the density is left${intervalText === '' ? '' : ` (${intervalText})`}, n = ${read.length}.`,
    x: { title: 'Patch', scale: 'category', categories: read.map(({ series }, index) => (series === '' ? `${index + 1}` : series)) },
    y: { title: 'Density retained', unit: '%', scale: 'linear' },
    series: [{ name: 'readings', kind: 'points', role: 'reading', points: read.map(({ retentionPct }, index) => ({ x: index, y: retentionPct })) }],
  };
}
