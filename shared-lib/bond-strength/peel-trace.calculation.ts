import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import type { ResultValue, TableRow } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { convertStrength } from '../quantity/units.ts';
import { analyseTrace, type TraceAnalysis } from './analyse-trace.ts';
import { peelEnergy, TAIL_PER_BOND, type PeelGeometry } from './peel-energy.ts';
import { STRENGTH_UNITS, strengthOf } from './strength.ts';
import { checkTrace, columnsFromPoints } from './trace-columns.ts';
import { tracePointsSchema } from './trace-points.ts';
import { traceFigure } from './trace-figure.ts';

const LEVEL = 0.95;

const input = z.strictObject({
  widthMm: z.number().positive().max(1000),
  points: tracePointsSchema,
  discardStartMm: z.number().min(0).optional(),
  discardEndMm: z.number().min(0).optional(),
  fromMm: z.number().optional(),
  toMm: z.number().optional(),
  speedMmPerMin: z.number().positive().optional(),
  tareN: z.number().optional(),
  unit: z.enum(STRENGTH_UNITS).default('N/15 mm'),
  peaks: z.enum(['A', 'B', 'C', 'D', 'E']).optional(),
  geometry: z.enum(['t-peel', '180-degree', '90-degree']).default('t-peel'),
});
type Input = z.output<typeof input>;

const columns: TableColumn[] = [
  { key: 'quantity', title: 'Over the plateau' },
  { key: 'forceN', title: 'Force', unit: 'N' },
  { key: 'strength', title: 'Strength' },
  { key: 'unit', title: 'Unit of strength' },
];

/** The steady part of one peel trace: force, strength, energy, and on request the peaks by ISO 6133. */
export const peelTraceCalculation = defineCalculation({
  id: 'peel-trace',
  version: '1',
  title: 'Peel trace',
  input,
  compute: (values) => {
    const trace = columnsFromPoints(values.points);
    checkTrace(trace, (index, column) => `points[${index}][${column}]`);
    const analysis = analyseTrace(trace, values, LEVEL);
    return {
      results: results(analysis, values),
      table: table(analysis, values),
      flags: analysis.flags,
      notes: notes(analysis, values),
      figures: [traceFigure(analysis)],
      sources: values.peaks ? ['ISO 6133:2015 (median and range of peaks; the rules of methods A to E from memory)'] : [],
    };
  },
  columns,
  cautions: [],
  sources: [
    'Plateau proposed as the central 80 % of the travel under load, as ASTM F88 averages a seal; the initial peak left out, as in ASTM F904 and ASTM D1876',
    'Interval of the mean by non-overlapping block means: B. Schmeiser, Oper. Res. 30 (1982) 556',
    'Peel energy G = 2F/b (T-peel, 180°), F/b (90°): textbook',
  ],
});

function results({ force, fromMm, toMm, peaks }: TraceAnalysis, { widthMm, unit, geometry }: Input): Record<string, ResultValue> {
  const value = (number: number, of: string): ResultValue => ({ value: number, unit: of, low: null, high: null, level: null, n: force.n, bound: 'exact' });
  const withInterval = (scale: (forceN: number) => number, of: string): ResultValue => ({
    ...value(scale(force.mean), of),
    ...(force.low === null || force.high === null ? {} : { low: scale(force.low), high: scale(force.high), level: LEVEL }),
  });
  return {
    mean: withInterval((forceN) => forceN, 'N'),
    median: value(force.median, 'N'),
    minimum: value(force.minimum, 'N'),
    maximum: value(force.maximum, 'N'),
    standardDeviation: value(force.standardDeviation, 'N'),
    strength: withInterval((forceN) => strengthOf(forceN, widthMm, unit), unit),
    peelEnergy: withInterval((forceN) => peelEnergy(forceN, widthMm, geometry), 'J/m²'),
    plateauFrom: value(fromMm, 'mm'),
    plateauTo: value(toMm, 'mm'),
    ...(peaks && {
      peakMedian: { ...value(peaks.medianN, 'N'), n: peaks.chosen.length || force.n },
      peakRange: { ...value(peaks.rangeN, 'N'), n: peaks.chosen.length || force.n },
      peakStrength: { ...value(strengthOf(peaks.medianN, widthMm, unit), unit), n: peaks.chosen.length || force.n },
    }),
  };
}

function table({ force, peaks }: TraceAnalysis, { widthMm, unit, peaks: method }: Input): TableRow[] {
  const row = (quantity: string, forceN: number): TableRow => ({ quantity, forceN, strength: strengthOf(forceN, widthMm, unit), unit });
  return [
    row('mean', force.mean),
    row('median', force.median),
    row('minimum', force.minimum),
    row('maximum', force.maximum),
    row('standard deviation', force.standardDeviation),
    ...(peaks ? [row(`median of peaks, method ${method}`, peaks.medianN), row(`range of peaks, method ${method}`, peaks.rangeN)] : []),
  ];
}

const GEOMETRY_WORDS: Record<PeelGeometry, string> = { 't-peel': 'T-peel', '180-degree': '180° peel', '90-degree': '90° peel' };

function notes({ plateau, force, fromMm, toMm, peakFallN, peaks }: TraceAnalysis, values: Input): string[] {
  const { unit, geometry, speedMmPerMin } = values;
  const place = `${formatNumber(fromMm, 2)} to ${formatNumber(toMm, 2)} mm`;
  const tail = TAIL_PER_BOND[geometry];
  const all = [
    plateau.origin === 'given'
      ? `The plateau was set to ${place}.`
      : `The plateau is proposed at ${place}: the central 80 % of the travel under load, after the initial peak. Set fromMm and toMm to change it.`,
    force.low === null
      ? 'The mean has no interval: fewer than 20 points lie on the plateau.'
      : 'The interval of the mean comes from the scatter of block means along the plateau, since neighbouring points are not independent. It speaks of this trace alone, not of other specimens. Median, extremes and standard deviation are given without one.',
    `Peel energy G = ${tail === 2 ? '2F/b' : 'F/b'} for a ${GEOMETRY_WORDS[geometry]}; bending and stretching of the tails are in it.`,
  ];
  if (unit !== 'N/15 mm') {
    all.push(`1 N/15 mm = ${formatNumber(convertStrength(1, 'N/15 mm', unit), 4)} ${unit}.`);
  }
  if (speedMmPerMin !== undefined && tail === 2) {
    all.push(`At ${speedMmPerMin} mm/min of the grips the bond opens at ${speedMmPerMin / 2} mm/min.`);
  }
  if (peaks) all.push(peakNote(values, peaks.found, peaks.chosen.length, peakFallN));
  return all;
}

function peakNote({ peaks: method }: Input, found: number, chosen: number, fallN: number): string {
  const threshold = `a peak counts when the force falls by at least ${fallN.toPrecision(2)} N before and after it`;
  return method === 'D'
    ? 'ISO 6133 method D reads the middle value of the central 80 % of the line, not single peaks; the range is of the force there.'
    : `ISO 6133 method ${method}: ${chosen} of ${found} peaks chosen; ${threshold}. The rules of the methods are from memory of the standard, which wins where it differs.`;
}
