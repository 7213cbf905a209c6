import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import type { ColumnTrial } from './column-trial.ts';
import { censoredOf } from './trial-reading.ts';

/** Standard deviation of single readings within a trial, pooled over the trials that have one; `null` where none shows any. */
export function spreadWithin(trials: readonly ColumnTrial[]): { standardDeviation: number; degreesOfFreedom: number } | null {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const { readings } of trials) {
    const n = readings.length;
    if (n < 2) continue;
    const { standardDeviation } = fitCensoredNormal(readings.map(censoredOf));
    if (standardDeviation === null) continue;
    // Maximum likelihood divides by n.
    squares += n * standardDeviation ** 2;
    degreesOfFreedom += n - 1;
  }
  return squares > 0 ? { standardDeviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom } : null;
}
