import type { StripSpec } from '../figure/strip.ts';
import type { Censored } from '../statistics/censored-normal.ts';
import { readObservation } from '../statistics/observation.ts';
import type { Observation } from '../statistics/observation.ts';

/** A reading as the strips show it: exact, within a bracket, or open to one side. */
export type TrialReading = StripSpec['readings'][number];

/** A reading as the calculations take it. */
export function observationOf({ value, open, low, high }: TrialReading): Observation {
  if (open === 'up') return { atLeast: value };
  if (open === 'down') return { atMost: value };
  return low !== undefined && high !== undefined && high > low ? { low, high } : value;
}

/** The same as the likelihood takes it. */
export function censoredOf(reading: TrialReading): Censored {
  return readObservation(observationOf(reading), 'readings');
}

/** Whether every reading is a plain number. */
export function areExact(readings: readonly TrialReading[]): boolean {
  return readings.every((reading) => typeof observationOf(reading) === 'number');
}
