import type { Calibration } from './instrument-doubt.ts';

/** Days before its end at which a calibration, a lot or a bottle is said to end soon. */
export const SOON_DAYS = 30;
const DAY_MS = 86_400_000;

export type Standing = 'in order' | 'ends soon' | 'ended' | 'none';

/** How a last day stands to `today`; both ISO 8601 dates, `null`: no last day. */
export function standingOf(lastDay: string | null, today: string): Standing {
  if (lastDay === null) return 'in order';
  if (lastDay < today) return 'ended';
  return Date.parse(lastDay) - Date.parse(today) <= SOON_DAYS * DAY_MS ? 'ends soon' : 'in order';
}

/**
 * How an instrument stands: by its latest calibration; `none` without any.
 * @param calibrations of two on one day, that which was entered last comes first
 */
export function calibrationStanding(calibrations: readonly Calibration[], today: string): { standing: Standing; dueOn: string | null } {
  const [latest] = calibrations.toSorted((a, b) => b.calibratedOn.localeCompare(a.calibratedOn));
  return latest ? { standing: standingOf(latest.dueOn, today), dueOn: latest.dueOn } : { standing: 'none', dueOn: null };
}
