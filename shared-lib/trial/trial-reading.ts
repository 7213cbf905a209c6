import type { StripSpec } from '../figure/strip.ts';
import type { Censored } from '../statistics/censored-normal.ts';

/** A reading as the strips show it: exact, within a bracket, or open to one side. */
export type TrialReading = StripSpec['readings'][number];

/** A reading as the comparisons take it. */
export type Observation = number | { atLeast: number } | { atMost: number } | { low: number; high: number };

export function observationOf({ value, open, low, high }: TrialReading): Observation {
  if (open === 'up') return { atLeast: value };
  if (open === 'down') return { atMost: value };
  return low !== undefined && high !== undefined && high > low ? { low, high } : value;
}

/** The same as the likelihood takes it. */
export function censoredOf(reading: TrialReading): Censored {
  const observation = observationOf(reading);
  if (typeof observation === 'number') return { low: observation, high: observation };
  if ('atLeast' in observation) return { low: observation.atLeast, high: null };
  if ('atMost' in observation) return { low: null, high: observation.atMost };
  return observation;
}

/** Whether every reading is a plain number. */
export function areExact(readings: readonly TrialReading[]): boolean {
  return readings.every((reading) => typeof observationOf(reading) === 'number');
}
