import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { formatWithInterval } from '../quantity/format.ts';
import { STANDARD_GRAVITY } from '../quantity/units.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import { medianGrade } from '../statistics/median-grade.ts';
import { summarise } from '../statistics/summarise.ts';
import { blockingGrades } from './blocking-grade.ts';
import { gradesFigure } from '../figure/grades-figure.ts';

const LEVEL = 0.95;
/** ASTM D3354: 100 cm², up to 200 g. */
const STANDARD_AREA_CM2 = 100;
const STANDARD_LIMIT_G = 200;

const input = z.strictObject({
  /** A load that separated the layers (or, `separated: false`, did not), a grade of blocking, or both. */
  specimens: z
    .array(z.strictObject({ loadG: z.number().min(0).optional(), separated: z.boolean().default(true), grade: z.literal(blockingGrades).optional() }))
    .min(1)
    .max(1000),
  areaCm2: z.number().positive().default(STANDARD_AREA_CM2),
  limitG: z.number().positive().optional(),
});
type Input = z.output<typeof input>;

/** A specimen that was pulled apart by a load; `index` is its place among all. */
interface Loaded {
  loadG: number;
  separated: boolean;
  index: number;
}

const columns: TableColumn[] = [
  { key: 'specimen', title: 'Specimen', decimals: 0 },
  { key: 'loadG', title: 'Load', unit: 'g' },
  { key: 'pressurePa', title: 'Pressure', unit: 'Pa' },
  { key: 'separated', title: 'Separated' },
  { key: 'grade', title: 'Grade', decimals: 0 },
];

/** Blocking of layers of film: the load that pulls them apart, a lower bound where they held, and the grade of blocking. */
export const blockingLoadCalculation = defineCalculation({
  id: 'blocking-load',
  version: '1',
  title: 'Blocking',
  input,
  compute: (values) => {
    const { specimens, areaCm2, limitG } = values;
    const loaded = specimens.flatMap(({ loadG, separated, grade }, index): Loaded[] => {
      if (loadG === undefined && grade === undefined) throw new InputError(`specimens[${index}].loadG`, null, `loadG is missing: specimen ${index + 1} needs the load that separated it, a grade, or both.`);
      return loadG === undefined ? [] : [{ loadG, separated, index }];
    });
    const grades = specimens.flatMap(({ grade }) => grade ?? []);
    const { load, maximum, notes } = ofLoads(loaded);
    const grade = grades.length === 0 ? valueWithoutInterval(null, '', 0) : medianGrade(grades, 'lower');
    return {
      results: { load, pressure: inPascal(load, areaCm2), maximum, grade, worstGrade: valueWithoutInterval(grade.high, '', grades.length) },
      table: specimens.map(({ loadG = null, separated, grade: graded = null }, index) => ({ specimen: index + 1, loadG, pressurePa: loadG === null ? null : pascal(loadG, areaCm2), separated: loadG === null ? null : separated, grade: graded })),
      flags: flags(loaded, values),
      notes: [
        ...notes,
        ...(grades.length === 0 ? [] : ['The grade is the median of the specimens, the worse of two; its range runs from the best to the worst.']),
        'It measures the blocking that is there, not the tendency to block later or under another load, warmth or time.',
      ],
      figures: [...(loaded.length === 0 ? [] : [figure(loaded, load, limitG)]), ...(grades.length === 0 ? [] : [gradesFigure('blocking-grades', 'Grade of blocking', specimens.map((_, index) => `${index + 1}`), specimens.map((specimen) => specimen.grade ?? null), grade)])],
    };
  },
  columns,
  cautions: [],
  sources: ['ASTM D3354-21 (load in grams over 100 cm², limit 200 g); similar to ISO 11502 method B, not equivalent', '1 g over 100 cm² = 0.980665 Pa', 'Grades 0–5 of blocking: common practice'],
});

/** Pressure of a load in grams on an area in cm². */
function pascal(loadG: number, areaCm2: number): number {
  return (loadG * STANDARD_GRAVITY * 10) / areaCm2;
}

function inPascal(load: ResultValue, areaCm2: number): ResultValue {
  const convert = (value: number | null) => (value === null ? null : pascal(value, areaCm2));
  return { ...load, unit: 'Pa', value: convert(load.value), low: convert(load.low), high: convert(load.high) };
}

function ofLoads(loaded: readonly Loaded[]): { load: ResultValue; maximum: ResultValue; notes: string[] } {
  const n = loaded.length;
  if (n === 0) return { load: valueWithoutInterval(null, 'g', 0), maximum: valueWithoutInterval(null, 'g', 0), notes: ['No load was measured: the specimens were graded only.'] };
  const load = meanLoad(loaded);
  const highest = Math.max(...loaded.map(({ loadG }) => loadG));
  const together = loaded.filter(({ separated }) => !separated).length;
  const note =
    together === 0
      ? 'Every specimen separated: ordinary mean with t interval.'
      : load.bound === 'exact'
        ? `${together} of ${n} specimens did not separate and count as lower bounds: mean by maximum likelihood, profile-likelihood interval.`
        : `${together} of ${n} specimens did not separate, too many to estimate the spread: the mean is at least the mean of the loads.`;
  return { load, maximum: { value: highest, unit: 'g', low: together > 0 ? highest : null, high: null, level: null, n, bound: together > 0 ? 'at-least' : 'exact' }, notes: [note] };
}

function meanLoad(loaded: readonly Loaded[]): ResultValue {
  const n = loaded.length;
  const fit = fitCensoredNormal(loaded.map(({ loadG, separated }) => ({ low: loadG, high: separated ? loadG : null })), LEVEL);
  if (fit.status === 'estimated') {
    return { value: fit.mean, unit: 'g', low: fit.low, high: fit.high, level: fit.low === null && fit.high === null ? null : LEVEL, n, bound: 'exact' };
  }
  const { mean } = summarise(loaded.map(({ loadG }) => loadG), LEVEL);
  return { value: mean, unit: 'g', low: mean, high: null, level: null, n, bound: 'at-least' };
}

function flags(loaded: readonly Loaded[], { areaCm2, limitG }: Input): Flag[] {
  const found: Flag[] = [];
  if (loaded.length > 0 && areaCm2 !== STANDARD_AREA_CM2) {
    found.push({ code: 'area', where: 'areaCm2', text: `The plates have ${areaCm2} cm²; ASTM D3354 asks for ${STANDARD_AREA_CM2} cm²: compare pressures, not grams.` });
  }
  loaded.forEach(({ loadG, separated, index }) => {
    const where = `specimens[${index}].loadG`;
    if (separated && loadG > STANDARD_LIMIT_G) {
      found.push({ code: 'beyond-limit', where, text: `Specimen ${index + 1} separated at ${loadG} g, beyond the ${STANDARD_LIMIT_G} g to which ASTM D3354 goes.` });
    }
    if (!separated && limitG !== undefined && loadG < limitG) {
      found.push({ code: 'stopped-early', where, text: `Specimen ${index + 1} was still together at ${loadG} g, but the load was to go to ${limitG} g.` });
    }
  });
  return found;
}

function figure(loaded: readonly Loaded[], load: ResultValue, limitG: number | undefined): Figure {
  return {
    id: 'loads',
    title: 'Blocking load of the specimens',
    finding: `Mean of ${loaded.length} specimens ${formatWithInterval(load)}.`,
    x: { title: 'Specimen', scale: 'category', categories: loaded.map(({ index }) => String(index + 1)) },
    y: { title: 'Load', unit: 'g', scale: 'linear', min: 0 },
    series: [
      { name: 'load', kind: 'points', role: 'reading', points: loaded.map(({ loadG, separated }, x) => ({ x, y: loadG, ...(!separated && { open: 'up' as const }) })) },
    ],
    lines: limitG === undefined ? [] : [{ name: 'limit', axis: 'y', value: limitG, role: 'limit' }],
  };
}
