import { studentTQuantile, studentTUpperTail } from './distributions.ts';
import { summarise } from './summarise.ts';

export interface GrubbsTest {
  /** Largest distance from the mean in standard deviations. */
  statistic: number;
  /** Statistic that a normal sample exceeds with probability `alpha`. */
  critical: number;
  /** Bonferroni bound of the two-sided p value, at most 1. */
  p: number;
  /** Index of the farthest value. */
  index: number;
  outlying: boolean;
}

/**
 * Two-sided Grubbs test: is the value farthest from the mean an outlier? It flags; whether a reading counts is for a
 * person to decide.
 * @returns `null` for fewer than three values or values without spread, where the test says nothing.
 * Source: F. E. Grubbs, Technometrics 11 (1969) 1; ISO 5725-2.
 */
export function grubbsTest(values: readonly number[], alpha = 0.05): GrubbsTest | null {
  const n = values.length;
  if (n < 3) return null;
  const { mean, standardDeviation } = summarise(values);
  if (!standardDeviation) return null;
  let index = 0;
  values.forEach((value, i) => {
    if (Math.abs(value - mean) > Math.abs(values[index]! - mean)) index = i;
  });
  const statistic = Math.abs(values[index]! - mean) / standardDeviation;
  const critical = grubbsCritical(n, alpha);
  const square = statistic * statistic;
  const room = (n - 1) ** 2 - n * square;
  const t = room > 0 ? Math.sqrt((n * (n - 2) * square) / room) : Infinity;
  return { statistic, critical, p: Math.min(1, 2 * n * studentTUpperTail(t, n - 2)), index, outlying: statistic > critical };
}

/** Critical value of the two-sided test (`sides` 1: for a suspect named beforehand as too high, or too low). */
export function grubbsCritical(n: number, alpha = 0.05, sides: 1 | 2 = 2): number {
  const t = -studentTQuantile(alpha / (sides * n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}
