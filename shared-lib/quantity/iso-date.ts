const DAY_MS = 86_400_000;

/** Whether `text` is a day of the calendar as ISO 8601 writes it, '2026-03-09'; '2026-02-30' is none. */
export function isIsoDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(text);
  return !Number.isNaN(time) && dateOf(time) === text;
}

/**
 * The day so many whole days after `date`.
 * @param date as `isIsoDate` accepts
 */
export function daysAfter(date: string, days: number): string {
  return dateOf(Date.parse(date) + days * DAY_MS);
}

/** Whole days from one day to another, less than 0 backwards. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);
}

/** A date without a time is read, counted and written in UTC, which has no summer time. */
function dateOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}
