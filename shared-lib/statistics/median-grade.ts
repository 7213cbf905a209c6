import type { ResultValue } from '../calculation/result.ts';
import { summarise } from './summarise.ts';

/**
 * Median of grades, with the range from the lowest to the highest; grades have an order but no distances, so there is no
 * mean and no interval. Between two grades the median is the worse one, on a scale whose better end is `better`.
 * @param grades at least one.
 * @param step of the scale, 1 for whole grades.
 */
export function medianGrade(grades: readonly number[], better: 'higher' | 'lower', step = 1): ResultValue {
  const { median, minimum, maximum } = summarise(grades);
  const value = (better === 'higher' ? Math.floor(median / step) : Math.ceil(median / step)) * step;
  return { value, unit: '', low: minimum, high: maximum, level: null, n: grades.length, bound: 'exact' };
}
