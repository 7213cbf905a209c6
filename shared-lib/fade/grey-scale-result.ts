import type { ResultValue } from '../calculation/result.ts';
import { greyScaleGrade } from './grey-scale-change.ts';

/** The grey-scale grade of a mean ΔEF; its interval are the grades of the ends of the ΔEF interval. */
export function greyScaleResult(difference: ResultValue): ResultValue {
  const { value, low, high, level, n } = difference;
  if (value === null) return { value, unit: '', low: null, high: null, level: null, n, bound: 'exact' };
  const { grade, text } = greyScaleGrade(value);
  return {
    value: grade,
    text,
    unit: '',
    low: high === null ? null : greyScaleGrade(high).grade,
    high: low === null ? null : greyScaleGrade(low).grade,
    level,
    n,
    bound: 'exact',
  };
}
