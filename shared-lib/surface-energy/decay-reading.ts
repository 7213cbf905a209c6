import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import type { DecayReading } from './decay-fit.ts';
import { tensionMNm } from './film-position.ts';

export const decayReadingSchema = z.strictObject({
  /** Days since treatment. */
  days: z.number().min(0).max(3650),
  wettingMNm: tensionMNm.optional(),
  wetsMNm: tensionMNm.optional(),
  retractsMNm: tensionMNm.optional(),
});

/**
 * A reading of the decay: a tension taken as measured, or the bracket of test fluids.
 * @throws InputError when it has neither or both, or when the bracket is upside down
 */
export function decayReading(given: z.output<typeof decayReadingSchema>, field: string): DecayReading {
  const { days, wettingMNm, wetsMNm, retractsMNm } = given;
  const bracketed = wetsMNm !== undefined || retractsMNm !== undefined;
  if (wettingMNm !== undefined && bracketed) {
    throw new InputError(`${field}.wettingMNm`, wettingMNm, 'Give either the wetting tension or the fluids that held and retracted, not both.');
  }
  if (wettingMNm !== undefined) return { days, low: wettingMNm, high: wettingMNm };
  if (!bracketed) {
    throw new InputError(`${field}.wetsMNm`, null, 'This reading is empty: give the highest fluid that held, the lowest that retracted, or both.');
  }
  if (wetsMNm !== undefined && retractsMNm !== undefined && retractsMNm <= wetsMNm) {
    throw new InputError(
      `${field}.retractsMNm`,
      retractsMNm,
      `The fluid that retracted (${retractsMNm} mN/m) must be higher than the one that held (${wetsMNm} mN/m).`,
    );
  }
  return { days, low: wetsMNm ?? -Infinity, high: retractsMNm ?? Infinity };
}

/** Different days, and readings closed on both sides, that a decay needs. */
const fewest = 3;

/** @throws InputError unless enough readings on enough days can tell a curve */
export function refuseTooFew(readings: readonly DecayReading[]): void {
  const closed = readings.filter(({ low, high }) => Number.isFinite(low) && Number.isFinite(high));
  if (readings.every(({ high }) => high === Infinity)) {
    throw new InputError('readings', readings.length, 'No fluid retracted in any reading, so nothing shows a decay; test higher fluids.');
  }
  if (readings.every(({ low }) => low === -Infinity)) {
    throw new InputError('readings', readings.length, 'No fluid held in any reading, so nothing shows a decay; test lower fluids.');
  }
  const days = new Set(closed.map((reading) => reading.days)).size;
  if (days < fewest) {
    throw new InputError(
      'readings',
      readings.length,
      `A decay needs readings with both ends on at least ${fewest} different days; there ${days === 1 ? 'is 1 such day' : `are ${days} such days`}.`,
    );
  }
}
