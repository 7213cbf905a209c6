import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import type { CalculationResult } from '../../../shared-lib/calculation/result.ts';
import type { StudyReading } from '../../../shared-lib/notebook/trial-entries.ts';
import { measurementStudyCalculation } from '../../../shared-lib/statistics/measurement-study.calculation.ts';

/** The readings of a study worked out, as numbers or as grades. @throws InputError as the calculation `measurement-study` */
export function evaluateStudy(kind: 'number' | 'grade', unit: string, readings: readonly StudyReading[]): CalculationResult {
  return runCalculation(measurementStudyCalculation, {
    readings: readings.map(({ value, ...reading }) => ({ ...reading, ...(kind === 'grade' ? { grade: value } : { value }) })),
    unit,
  });
}
