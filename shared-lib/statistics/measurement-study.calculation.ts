import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { studyCells } from './study-cells.ts';
import { studyOfGrades } from './study-of-grades.ts';
import { studyOfNumbers } from './study-of-numbers.ts';
import { levelSchema } from './level.ts';

const label = z.union([z.string().min(1).max(60), z.number()]).transform(String);

const input = z.strictObject({
  /** Every appraiser reads every part as often. A reading is a `value`, or a `grade` of the `scale`. */
  readings: z.array(z.strictObject({ part: label, appraiser: label, trial: label.default('1'), value: z.number().optional(), grade: z.union([z.number(), z.string().min(1).max(60)]).optional() })).min(2).max(20_000),
  method: z.enum(['anova', 'average-range']).default('anova'),
  /** Whether an interaction that is no more than scatter goes into repeatability. */
  pooling: z.enum(['auto', 'never']).default('auto'),
  /** Grades in order; without it, the grades that occur. Numbers sort by size, words as they first come. */
  scale: z.array(z.union([z.number(), z.string()])).min(2).max(50).optional(),
  /** Width of the tolerance the method is to judge. */
  toleranceWidth: z.number().positive().optional(),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

export const measurementStudyCalculation = defineCalculation({
  id: 'measurement-study',
  version: '1',
  title: 'Measurement study: repeatability and agreement',
  input,
  compute: ({ readings, method, pooling, scale, toleranceWidth, unit, level }): Outcome => {
    const graded = readings.some(({ grade }) => grade !== undefined);
    readings.forEach(({ value, grade }, index) => {
      if ((graded ? grade : value) === undefined || (graded ? value : grade) !== undefined) {
        throw new InputError(`readings[${index}]`, readings[index], `readings[${index}] needs ${graded ? 'a grade' : 'a value'} and nothing else, like the others.`);
      }
      if (scale && grade !== undefined && !scale.includes(grade)) {
        throw new InputError(`readings[${index}].grade`, grade, `readings[${index}].grade is ${grade}, which is not on the scale ${scale.join(', ')}; correct it, or give the scale that was used.`);
      }
    });
    if (!graded) return studyOfNumbers(studyCells(readings.map(({ part, appraiser, trial, value }) => ({ part, appraiser, trial, reading: value! }))), { method, pooling, toleranceWidth, unit, level });
    return studyOfGrades(studyCells(readings.map(({ part, appraiser, trial, grade }) => ({ part, appraiser, trial, reading: grade! }))), scale, level);
  },
  columns: [
    { key: 'source', title: 'Source' },
    { key: 'sumOfSquares', title: 'Sum of squares' },
    { key: 'df', title: 'Degrees of freedom', decimals: 0 },
    { key: 'meanSquare', title: 'Mean square' },
    { key: 'F', title: 'F', decimals: 2 },
    { key: 'p', title: 'p', decimals: 4 },
    { key: 'a', title: 'Appraiser' },
    { key: 'b', title: 'Against' },
    { key: 'compared', title: 'Readings compared', decimals: 0 },
    { key: 'agreementPct', title: 'Agreement', unit: '%', decimals: 0 },
    { key: 'kappa', title: 'Kappa', decimals: 2 },
    { key: 'weightedKappa', title: 'Weighted kappa', decimals: 2 },
  ],
  cautions: [],
  sources: [
    'Crossed study: D. C. Montgomery, Introduction to Statistical Quality Control, 6th ed. (2009), 8.7; intervals: R. K. Burdick, C. M. Borror, D. C. Montgomery, Design and Analysis of Gauge R&R Studies (2005)',
    'Kappa: J. Cohen, Psychol. Bull. 70 (1968) 213; J. L. Fleiss, J. Cohen, B. S. Everitt, Psychol. Bull. 72 (1969) 323',
  ],
});
