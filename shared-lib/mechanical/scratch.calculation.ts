import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure, FigurePoint } from '../figure/figure.ts';
import { formatPlain, formatWithInterval } from '../quantity/format.ts';
import { bracketedMean } from '../statistics/bracketed-mean.ts';
import { levelSchema } from '../statistics/level.ts';
import { medianGrade } from '../statistics/median-grade.ts';
import { gradeSchema } from './grade-field.ts';
import { gradesFigure } from '../figure/grades-figure.ts';

const loadN = z.number().positive().max(1000);

const input = z.strictObject({
  /**
   * Per specimen a grade (fingernail, or one load), the loads of a rising series, or both: the highest load that left no
   * scratch and the first that left one. Without `scratchedN` no load scratched it.
   */
  specimens: z.array(z.strictObject({ label: z.string().max(100).optional(), grade: gradeSchema.optional(), heldN: loadN.optional(), scratchedN: loadN.optional() })).min(1).max(1000),
  level: levelSchema,
});
type Specimen = z.output<typeof input>['specimens'][number];

/** Between the two loads the true one may lie anywhere; wider than this share of it the series was coarse. */
const COARSE = 0.5;

export const scratchCalculation = defineCalculation({
  id: 'scratch',
  version: '1',
  title: 'Scratch: grade and load at the first scratch',
  input,
  compute: ({ specimens, level }) => {
    specimens.forEach(refuseDisorder);
    const names = specimens.map(({ label }, index) => label ?? `${index + 1}`);
    const grades = specimens.flatMap(({ grade }) => (grade === undefined ? [] : [grade]));
    const grade = grades.length === 0 ? valueWithoutInterval(null, '', 0) : medianGrade(grades, 'higher');
    const brackets = specimens.map(bracketOf);
    const loaded = brackets.filter((bracket) => bracket !== null);
    const { mean: load, note } = loaded.length === 0 ? { mean: valueWithoutInterval(null, 'N', 0), note: '' } : bracketedMean(loaded, 'N', level, 0);
    const never = loaded.filter(({ high }) => high === null).length;
    return {
      results: { grade, load, weakest: weakestOf(loaded) },
      table: specimens.map((specimen, index) => ({ specimen: names[index]!, grade: specimen.grade ?? null, heldN: specimen.heldN ?? null, scratchedN: specimen.scratchedN ?? null })),
      flags: flagsOf(specimens),
      notes: [
        ...(grades.length > 0 ? ['The grade is the median of the specimens with their range; of two middle grades the worse counts. The scale is ours, after common practice.'] : []),
        ...(loaded.length > 0 ? [`${note} The first scratch lies between the last load without and the first with one.`] : []),
        ...(never > 0 ? [`${never} of ${loaded.length} specimens ${never === 1 ? 'was not scratched by any load and counts as a lower bound' : 'were not scratched by any load and count as lower bounds'}.`] : []),
      ],
      figures: [
        ...(grades.length > 0 ? [gradesFigure('grades', 'Grades of the scratches', names, specimens.map((specimen) => specimen.grade ?? null), grade)] : []),
        ...(loaded.length > 0 ? [loadFigure(names, brackets, load)] : []),
      ],
    };
  },
  columns: [
    { key: 'specimen', title: 'Specimen' },
    { key: 'grade', title: 'Grade', decimals: 0 },
    { key: 'heldN', title: 'No scratch at', unit: 'N' },
    { key: 'scratchedN', title: 'Scratch at', unit: 'N' },
  ],
  cautions: [],
  sources: [
    'ISO 1518-1 (one load), ISO 1518-2 (rising load): scratch under a loaded stylus; titles from memory. The bracketed, censored mean is ours',
    'Fingernail and its grades: common practice of the trade',
  ],
});

interface LoadBracket {
  low: number;
  high: number | null;
}

/** `null` without a load. A first load that scratched leaves everything from zero on. */
function bracketOf({ heldN, scratchedN }: Specimen): LoadBracket | null {
  return heldN === undefined && scratchedN === undefined ? null : { low: heldN ?? 0, high: scratchedN ?? null };
}

function refuseDisorder({ grade, heldN, scratchedN }: Specimen, index: number): void {
  if (grade === undefined && heldN === undefined && scratchedN === undefined) {
    throw new InputError(`specimens[${index}].grade`, null, 'Give a grade, the loads, or both.');
  }
  if (heldN !== undefined && scratchedN !== undefined && scratchedN <= heldN) {
    throw new InputError(`specimens[${index}].scratchedN`, scratchedN, `The load that scratched must lie above the ${heldN} N that left no scratch, not at ${scratchedN} N.`);
  }
}

/** The specimen that was scratched first lies between the lowest of all lower and the lowest of all upper loads. */
function weakestOf(brackets: readonly LoadBracket[]): ResultValue {
  const n = brackets.length;
  if (n === 0) return valueWithoutInterval(null, 'N', 0);
  const low = Math.min(...brackets.map((bracket) => bracket.low));
  const high = Math.min(...brackets.map((bracket) => bracket.high ?? Infinity));
  if (high === Infinity) return { value: low, unit: 'N', low, high: null, level: null, n, bound: 'at-least' };
  return { value: (low + high) / 2, unit: 'N', low, high, level: null, n, bound: 'between' };
}

function flagsOf(specimens: readonly Specimen[]): Flag[] {
  return specimens.flatMap(({ heldN, scratchedN }, index): Flag[] => {
    const where = `specimens[${index}].scratchedN`;
    if (scratchedN === undefined) return [];
    if (heldN === undefined) return [{ code: 'first-load', where, text: `Specimen ${index + 1} was scratched by the first load, ${formatPlain(scratchedN)} N; begin lower.` }];
    if (scratchedN - heldN <= COARSE * scratchedN) return [];
    return [{ code: 'coarse-steps', where, text: `Specimen ${index + 1}: from ${formatPlain(heldN)} to ${formatPlain(scratchedN)} N is a coarse step; loads between them would tell more.` }];
  });
}

function loadFigure(names: string[], brackets: readonly (LoadBracket | null)[], load: ResultValue): Figure {
  const points = brackets.flatMap((bracket, x): FigurePoint[] => {
    if (bracket === null) return [];
    const { low, high } = bracket;
    return [high === null ? { x, y: low, open: 'up' } : { x, y: (low + high) / 2, low, high }];
  });
  return {
    id: 'loads',
    title: 'Load at the first scratch',
    finding: `Load at the first scratch ${formatWithInterval(load)}, ${load.n} ${load.n === 1 ? 'specimen' : 'specimens'}.`,
    x: { title: 'Specimen', scale: 'category', categories: names },
    y: { title: 'Load', unit: 'N', scale: 'linear', min: 0 },
    series: [{ name: 'between the last load without and the first with a scratch', kind: 'points', role: 'reading', points }],
    lines: load.bound === 'exact' && load.value !== null ? [{ name: 'mean', axis: 'y', value: load.value, role: 'mean' }] : [],
  };
}
