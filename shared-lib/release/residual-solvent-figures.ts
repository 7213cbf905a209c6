import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import { predictLinear } from '../statistics/linear-regression.ts';
import type { CalibrationLine, CalibrationPoint } from './calibration-line.ts';
import type { SolventAmount } from './solvent-amount.ts';
import { totalPerSpecimen } from './solvent-total.ts';

/** Every solvent with its interval, or an arrow down where it was not found, beside its own limit. */
export function solventsFigure(solvents: readonly (SolventAmount & { limitMgM2: number | undefined })[], total: ResultValue): Figure {
  const names = solvents.map(({ name }, index) => name || `solvent ${index + 1}`);
  const limits = solvents.flatMap(({ limitMgM2 }, x) => (limitMgM2 === undefined ? [] : [{ x, y: limitMgM2 }]));
  return {
    id: 'solvents',
    title: 'Residual solvents',
    finding: `${solvents.map(({ result }, index) => `${names[index]} ${formatValue(result).text}`).join(', ')}${solvents.length > 1 ? `; together ${formatValue(total).text}` : ''}.`,
    x: { title: 'Solvent', scale: 'category', categories: names },
    y: { title: 'Residual solvent', unit: 'mg/m²', scale: 'linear', min: 0 },
    series: [
      {
        name: 'found',
        kind: 'points',
        role: 'reading',
        points: solvents.map(({ result: { value, low, high, bound } }, x) => ({ x, y: value, ...(low !== null && high !== null ? { low, high } : {}), ...(bound === 'at-most' ? { open: 'down' as const } : {}) })),
      },
      ...(limits.length > 0 ? [{ name: 'limit of the solvent', kind: 'points' as const, role: 'reference' as const, points: limits }] : []),
    ],
  };
}

/** All solvents together in each specimen: the dots of the strip. */
export function specimensFigure(solvents: readonly SolventAmount[], total: ResultValue): Figure {
  const totals = totalPerSpecimen(solvents);
  const isBound = (index: number) => solvents.some(({ specimens }) => specimens[index]!.below);
  return {
    id: 'specimen-totals',
    title: 'Total of each specimen',
    finding: `Total over ${totals.length} ${totals.length === 1 ? 'specimen' : 'specimens'}: ${formatValue(total).text}${totals.some((_, index) => isBound(index)) ? '; an arrow marks a total in which a solvent was not found and counts with its detection limit' : ''}.`,
    x: { title: 'Specimen', scale: 'category', categories: totals.map((_, index) => `${index + 1}`) },
    y: { title: 'Total', unit: 'mg/m²', scale: 'linear', min: 0 },
    series: [{ name: 'specimens', kind: 'points', role: 'reading', points: totals.map((y, x) => ({ x, y, ...(isBound(x) ? { open: 'down' as const } : {}) })) }],
  };
}

const LINE_POINTS = 41;

/** Standards, line and band of one solvent, with the specimens read off it. */
export function calibrationFigure(index: number, name: string, points: readonly CalibrationPoint[], line: CalibrationLine, specimens: readonly { amount: number; area: number }[], unit: string, level: number): Figure {
  const end = Math.max(line.highest, ...specimens.map(({ amount }) => amount));
  const grid = Array.from({ length: LINE_POINTS }, (_, step) => (end * step) / (LINE_POINTS - 1)).map((x) => ({ x, ...predictLinear(line.fit, [x], level) }));
  const title = name === '' ? 'Calibration' : `Calibration of ${name}`;
  return {
    id: `calibration-${index + 1}`,
    title,
    finding: `${title}: straight line through ${points.length} standards; ${specimens.length === 1 ? 'the specimen is' : 'the specimens are'} read off it.`,
    x: { title: 'Amount in the vial', unit, scale: 'linear', min: 0 },
    y: { title: 'Peak area', scale: 'linear' },
    series: [
      { name: 'standards', kind: 'points', role: 'reading', points: points.map(({ amount, area }) => ({ x: amount, y: area })) },
      { name: 'specimens', kind: 'points', role: 'reading', points: specimens.map(({ amount, area }) => ({ x: Math.max(0, amount), y: area })) },
      { name: 'line', kind: 'line', role: 'fit', points: grid.map(({ x, value }) => ({ x, y: value })) },
    ],
    bands: line.scatters ? [{ name: `${Number((100 * level).toPrecision(6))} % interval`, points: grid.flatMap(({ x, low, high }) => (low === null || high === null ? [] : [{ x, low, high }])) }] : [],
  };
}

/** ln of the areas against the extraction step: straight, or the sums mean nothing. */
export function headspaceFigure(index: number, name: string, series: { sampleAreas: readonly number[]; standardAreas: readonly number[] }): Figure {
  const points = (areas: readonly number[]) => areas.map((area, step) => ({ x: step + 1, y: area }));
  const title = name === '' ? 'Multiple extraction' : `Multiple extraction of ${name}`;
  return {
    id: `headspace-${index + 1}`,
    title,
    finding: `${title}: the areas of ${series.sampleAreas.length} steps of the specimen and ${series.standardAreas.length} of the standard fall along straight lines on a logarithmic scale.`,
    x: { title: 'Extraction', scale: 'linear', min: 0 },
    y: { title: 'Peak area', scale: 'log' },
    series: [
      { name: 'specimen', kind: 'points', role: 'reading', points: points(series.sampleAreas) },
      { name: 'standard', kind: 'points', role: 'reading', points: points(series.standardAreas) },
    ],
  };
}
