import type { ResultValue } from '../calculation/result.ts';
import type { Band, Figure, ReferenceLine, Series } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import type { BondSpecimen } from './bond-statistics.ts';
import { FAILURE_MODES, isLowerBound, MODE_WORDS } from './failure-mode.ts';

/** The specimens by failure mode, lower bounds with an open arrow, with the interval of the mean and the limit. */
export function bondFigure(specimens: readonly BondSpecimen[], mean: ResultValue, requiredNPer15mm: number | undefined): Figure {
  const series: Series[] = FAILURE_MODES.flatMap((mode) => {
    const points = specimens.flatMap((specimen, x) =>
      specimen.mode === mode ? [{ x, y: specimen.strength, ...(isLowerBound(mode) && { open: 'up' as const }) }] : [],
    );
    return points.length === 0 ? [] : [{ name: MODE_WORDS[mode], kind: 'points', role: 'reading', points }];
  });
  const lines: ReferenceLine[] = [];
  if (mean.value !== null) lines.push({ name: mean.bound === 'at-least' ? 'mean at least' : 'mean', axis: 'y', value: mean.value, role: 'mean' });
  if (requiredNPer15mm !== undefined) lines.push({ name: 'required', axis: 'y', value: requiredNPer15mm, role: 'limit' });
  const { text, intervalText } = formatValue(mean);
  const count = specimens.length;
  const torn = specimens.filter(({ mode }) => isLowerBound(mode)).length;
  const tornText = torn === 0 ? '' : torn === count ? '; in each the film gave way first' : `; in ${torn} of them the film gave way first`;
  return {
    id: 'specimens',
    title: 'Bond strength of the specimens',
    finding: `${count === 1 ? 'One specimen:' : `Mean of ${count} specimens`} ${text}${intervalText ? ` (${intervalText})` : ''}${tornText}.`,
    x: { title: 'Specimen', scale: 'category', categories: specimens.map((_, index) => String(index + 1)) },
    y: { title: 'Bond strength', unit: 'N/15 mm', scale: 'linear', min: 0 },
    series,
    bands: intervalBand(mean, count),
    lines,
  };
}

function intervalBand({ low, high }: ResultValue, count: number): Band[] {
  if (low === null || high === null) return [];
  return [{ name: '95 % interval of the mean', points: [-0.5, count - 0.5].map((x) => ({ x, low, high })) }];
}
