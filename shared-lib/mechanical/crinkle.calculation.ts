import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import { levelSchema } from '../statistics/level.ts';
import { medianGrade } from '../statistics/median-grade.ts';
import { gradeSchema } from './grade-field.ts';
import { gradesFigure } from '../figure/grades-figure.ts';
import { removedFields, removedPctOf, removedShare } from './removed-share.ts';

const { squares: _counted, ...percentFields } = removedFields;

const input = z.strictObject({
  specimens: z.array(z.strictObject({ label: z.string().max(100).optional(), ...percentFields, grade: gradeSchema.optional() })).min(1).max(1000),
  /** Flexes between the fingers. */
  flexes: z.int().min(1).max(1000).default(10),
  level: levelSchema,
});

const USUAL_FLEXES = { from: 8, to: 12 };

export const crinkleCalculation = defineCalculation({
  id: 'crinkle',
  version: '1',
  title: 'Crinkle: print lost by flexing',
  input,
  compute: ({ specimens, flexes, level }) => {
    const empty = specimens.findIndex(({ removedPct, grade }) => removedPct === undefined && grade === undefined);
    if (empty >= 0) throw new InputError(`specimens[${empty}].grade`, null, 'Give a grade, the percent removed, or both.');
    const names = specimens.map(({ label }, index) => label ?? `${index + 1}`);
    const grades = specimens.flatMap(({ grade }) => (grade === undefined ? [] : [grade]));
    const judged = specimens.flatMap((specimen, index) => (specimen.removedPct === undefined ? [] : [{ specimen, percent: removedPctOf(specimen, `specimens[${index}].`) }]));
    const percents = judged.map(({ percent }) => percent);
    const grade = grades.length === 0 ? valueWithoutInterval(null, '', 0) : medianGrade(grades, 'higher');
    const removed = percents.length === 0 ? valueWithoutInterval(null, '%', 0) : removedShare(judged.map(({ specimen }) => specimen), percents, level).removed;
    const removedFigure: Figure = {
      id: 'removed',
      title: 'Print removed',
      finding: `Mean ${formatValue(removed).text}, ${percents.length} ${percents.length === 1 ? 'specimen' : 'specimens'} of ${flexes} flexes.`,
      x: { title: 'Specimen', scale: 'category', categories: names },
      y: { title: 'Removed', unit: '%', scale: 'linear', min: 0 },
      series: [{ name: 'removed', kind: 'points', role: 'reading', points: specimens.map(({ removedPct }, x) => ({ x, y: removedPct ?? null })) }],
    };
    return {
      results: { grade, removedPct: removed },
      table: specimens.map((specimen, index) => ({ specimen: names[index]!, grade: specimen.grade ?? null, removedPct: specimen.removedPct ?? null })),
      flags:
        flexes >= USUAL_FLEXES.from && flexes <= USUAL_FLEXES.to
          ? []
          : [{ code: 'flexes', where: 'flexes', text: `${flexes} ${flexes === 1 ? 'flex' : 'flexes'}; about ten are common practice. Only like counts compare.` }],
      notes: [
        ...(grades.length > 0 ? ['The grade is the median of the specimens with their range; of two middle grades the worse counts. The scale is ours, after common practice.'] : []),
        ...(percents.length > 1 ? ['Removed: mean of the specimens with t interval, kept within 0 to 100 %.'] : []),
        ...(percents.length === 1 ? [removed.low === null ? 'Removed: one specimen has no interval.' : 'Removed: one specimen; the interval says how well its picture was read, not how far specimens differ.'] : []),
      ],
      figures: [
        ...(grades.length > 0 ? [gradesFigure('grades', 'Grades after crinkling', names, specimens.map((specimen) => specimen.grade ?? null), grade)] : []),
        ...(percents.length > 0 ? [removedFigure] : []),
      ],
    };
  },
  columns: [
    { key: 'specimen', title: 'Specimen' },
    { key: 'grade', title: 'Grade', decimals: 0 },
    { key: 'removedPct', title: 'Removed', unit: '%' },
  ],
  cautions: [],
  sources: ['Crinkle between the fingers, about ten flexes: common practice of the trade, no standard; scale of grades ours'],
});
