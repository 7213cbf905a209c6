import type { Flag } from '../calculation/result.ts';
import type { PairComparison } from './pair-comparison.ts';

/** One trial as it enters a comparison. */
export interface Trial {
  name: string;
  values: number[];
}

/** A trial's level with an interval of its own. */
export interface TrialLevel {
  /** Mean, or median of grades; `null` where the readings do not give one. */
  value: number | null;
  low: number | null;
  high: number | null;
}

/** A pair of trials; the difference is `null` where only the order of the readings can be judged. */
export type TrialPair = Omit<PairComparison, 'difference'> & { difference: number | null };

/** What a comparison of trials found, whatever the procedure. */
export interface TrialComparison {
  levels: TrialLevel[];
  pairs: TrialPair[];
  /** Name of the procedure, for the table. */
  method: string;
  /** Overall tests, `null` where they say nothing. */
  f: number | null;
  p: number | null;
  welchF: number | null;
  welchP: number | null;
  /** Spread of readings within a trial, for planning; `null` where there is none. */
  spread: number | null;
  notes: string[];
  flags: Flag[];
}
