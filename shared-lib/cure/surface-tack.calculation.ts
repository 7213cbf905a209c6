import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { formatWithInterval } from '../quantity/format.ts';
import { gradesFigure } from '../figure/grades-figure.ts';
import { bracketedMean } from '../statistics/bracketed-mean.ts';
import { levelSchema } from '../statistics/level.ts';
import { medianGrade } from '../statistics/median-grade.ts';
import { tackGrades } from './tack-grade.ts';

const UNIT = 'min';
const minutes = z.number().min(0).max(1e7);

const input = z.strictObject({
  /** A grade at the stated time, and the last look at which it was tacky and the first at which it was not: either may be open. */
  specimens: z
    .array(z.strictObject({ label: z.string().max(100).optional(), grade: z.literal(tackGrades).optional(), tackyAtMin: minutes.optional(), freeAtMin: minutes.optional() }))
    .min(1)
    .max(1000),
  level: levelSchema,
});
type Specimen = z.output<typeof input>['specimens'][number];

/** Tack left on a printed surface, by grade, and the time after which it is gone, known between two looks. */
export const surfaceTackCalculation = defineCalculation({
  id: 'surface-tack',
  version: '1',
  title: 'Surface tack',
  input,
  compute: ({ specimens, level }) => {
    specimens.forEach(refuseUnusable);
    const names = specimens.map(({ label }, index) => label ?? `${index + 1}`);
    const grades = specimens.flatMap(({ grade }) => grade ?? []);
    const grade = grades.length === 0 ? valueWithoutInterval(null, '', 0) : medianGrade(grades, 'lower');
    const timed = specimens.flatMap(({ tackyAtMin, freeAtMin }, index) => (tackyAtMin === undefined && freeAtMin === undefined ? [] : [{ name: names[index]!, low: tackyAtMin ?? 0, high: freeAtMin ?? null }]));
    const { tackFree, notes } = timeFrom(timed, level);
    return {
      results: { grade, worstGrade: valueWithoutInterval(grade.high, '', grades.length), tackFree },
      table: specimens.map(({ grade: graded = null, tackyAtMin = null, freeAtMin = null }, index) => ({ specimen: names[index]!, grade: graded, tackyAtMin, freeAtMin })),
      flags: specimens.flatMap((specimen, index) => openFlag(specimen, index, names[index]!)),
      notes: [
        ...(grades.length === 0 ? ['No specimen was graded.'] : ['The grade is the median of the specimens, the worse of two; its range runs from the best to the worst.']),
        ...notes,
        'It shows whether the surface is still sticky. A dry surface may lie over soft ink: it shows neither depth of cure nor conversion; oxygen at the surface may leave tack over well cured ink.',
      ],
      figures: [
        ...(grades.length === 0 ? [] : [gradesFigure('tack-grades', 'Grade of tack', names, specimens.map((specimen) => specimen.grade ?? null), grade)]),
        ...(timed.length === 0 ? [] : [timeFigure(timed, tackFree)]),
      ],
    };
  },
  columns: [
    { key: 'specimen', title: 'Specimen' },
    { key: 'grade', title: 'Grade', decimals: 0 },
    { key: 'tackyAtMin', title: 'Last tacky at', unit: UNIT },
    { key: 'freeAtMin', title: 'First free at', unit: UNIT },
  ],
  cautions: [],
  sources: ['Looks by touch and cotton fibres in the manner of ASTM D1640 (from memory); grades 0–5: common practice', 'Time known between two looks: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998)'],
});

/** @throws InputError for a specimen that says nothing, or was free of tack before it was tacky. */
function refuseUnusable({ grade, tackyAtMin, freeAtMin }: Specimen, index: number): void {
  const where = `specimens[${index}]`;
  if (grade === undefined && tackyAtMin === undefined && freeAtMin === undefined) throw new InputError(`${where}.grade`, null, `grade is missing: specimen ${index + 1} needs a grade, a time, or both.`);
  if (tackyAtMin !== undefined && freeAtMin !== undefined && freeAtMin <= tackyAtMin) {
    throw new InputError(`${where}.freeAtMin`, freeAtMin, `freeAtMin (${freeAtMin}) must be later than the last look at which specimen ${index + 1} was tacky (${tackyAtMin}).`);
  }
}

interface Timed {
  name: string;
  low: number;
  high: number | null;
}

function timeFrom(timed: readonly Timed[], level: number): { tackFree: ResultValue; notes: string[] } {
  if (timed.length === 0) return { tackFree: valueWithoutInterval(null, UNIT, 0), notes: ['No times were read, so no tack-free time is given.'] };
  const { mean, note } = bracketedMean(timed, UNIT, level, 0);
  return { tackFree: mean, notes: [`Tack-free time: ${note}`] };
}

function openFlag({ tackyAtMin, freeAtMin }: Specimen, index: number, name: string): Flag[] {
  if (tackyAtMin === undefined || freeAtMin !== undefined) return [];
  return [{ code: 'still-tacky', where: `specimens[${index}].tackyAtMin`, text: `Specimen ${name} was still tacky at the last look, ${tackyAtMin} min: its time is a lower bound.` }];
}

function timeFigure(timed: readonly Timed[], tackFree: ResultValue): Figure {
  return {
    id: 'tack-free',
    title: 'Tack-free time of the specimens',
    finding: `Free of tack after ${formatWithInterval(tackFree)}; n = ${timed.length}.`,
    x: { title: 'Specimen', scale: 'category', categories: timed.map(({ name }) => name) },
    y: { title: 'Time', unit: UNIT, scale: 'linear', min: 0 },
    series: [
      {
        name: 'between the looks',
        kind: 'points',
        role: 'reading',
        points: timed.map(({ low, high }, x) => (high === null ? { x, y: low, open: 'up' as const } : { x, y: (low + high) / 2, low, high })),
      },
    ],
  };
}
