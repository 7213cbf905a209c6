import { studentTQuantile } from '../statistics/distributions.ts';

/** One independent source of scatter. */
export interface Variance {
  variance: number;
  degreesOfFreedom: number;
}

/**
 * Half-width of the interval of a value whose variance is the sum of independent ones, with the degrees of freedom of
 * F. E. Satterthwaite, Biometrics Bull. 2 (1946) 110. `null` without any scatter.
 */
export function halfWidthOfSum(parts: readonly Variance[], level: number): number | null {
  const variance = parts.reduce((sum, part) => sum + part.variance, 0);
  if (!(variance > 0)) return null;
  const spread = parts.reduce((sum, part) => sum + part.variance ** 2 / part.degreesOfFreedom, 0);
  return studentTQuantile((1 + level) / 2, variance ** 2 / spread) * Math.sqrt(variance);
}
