import type { ResultValue } from '../../calculation/result.ts';

export interface StudiedReading {
  part: string;
  appraiser: string;
  value: number;
}

/** A property with the measurement study that holds for it. */
export interface StudiedProperty {
  title: string;
  unit: string;
  kind: 'number' | 'grade';
  /** What it is to decide at, in the units of a single reading; `null` where there is none. */
  limit: { lower: number | null; upper: number | null } | null;
  /** Readings that make a result. */
  replicates: number;
  /** The result is a mean of them, and steadier than one reading. */
  averaged: boolean;
  /** Of the calculation `measurement-study`. */
  results: Record<string, ResultValue>;
  readings: readonly StudiedReading[];
}

/** Whether one can decide with a property of a method, and why. */
export interface Fitness {
  property: string;
  title: string;
  /** `studied`: there is a study, and no limit to decide at. */
  standing: 'not studied' | 'studied' | 'fit' | 'not fit';
  /** The answer in one sentence. */
  text: string;
  /** One sentence each, with the numbers. */
  reasons: string[];
  /** What to improve first, '' without a study. */
  improve: string;
}
