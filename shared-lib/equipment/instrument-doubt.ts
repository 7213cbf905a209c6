import { daysInWords } from './reading-days.ts';

export interface Calibration {
  /** ISO 8601 date. */
  calibratedOn: string;
  /** The last day on which it counts; `null`: no day was set. */
  dueOn: string | null;
}

/** What is known of an instrument whose readings are looked at. */
export interface InstrumentTrust {
  name: string;
  calibrations: Calibration[];
  /** ISO 8601, or `null`. */
  retiredAt: string | null;
}

/**
 * Why readings of an instrument are doubtful, in one sentence; '' where a calibration held on every day they were taken.
 * A later calibration does not make good what was read before it.
 * @param days ISO 8601 dates, in order
 */
export function instrumentDoubt({ name, calibrations, retiredAt }: InstrumentTrust, days: readonly string[]): string {
  const uncovered = days.filter((day) => !calibrations.some(({ calibratedOn, dueOn }) => calibratedOn <= day && (dueOn === null || day <= dueOn)));
  const retired = days.filter((day) => retiredAt !== null && retiredAt.slice(0, 10) < day);
  if (uncovered.length > 0) return `Read with ${name} on ${daysInWords(uncovered)}, ${whyUncovered(calibrations, uncovered[0]!)}.`;
  if (retired.length > 0) return `Read with ${name} on ${daysInWords(retired)}, which was taken out of use on ${retiredAt!.slice(0, 10)}.`;
  return '';
}

function whyUncovered(calibrations: readonly Calibration[], day: string): string {
  if (calibrations.length === 0) return 'which has no calibration on record';
  const before = calibrations.filter(({ calibratedOn }) => calibratedOn <= day).map(({ dueOn }) => dueOn!);
  if (before.length === 0) return `before its first calibration on record, of ${calibrations.map(({ calibratedOn }) => calibratedOn).sort()[0]}`;
  return `whose calibration ended on ${before.sort().at(-1)}`;
}
