import type { Moment } from './plan.ts';

/** When a sample left the press and the laminator, ISO 8601; `null` where that is not stated. */
export interface StatedTimes {
  printedAt: string | null;
  laminatedAt: string | null;
}

/**
 * When a test of a plan is due on a sample, ISO 8601 in UTC; `null` while the time that its moment counts from is not
 * stated. A test on film before printing is due when the print left the press.
 */
export function dueAt({ from, hours }: Moment, { printedAt, laminatedAt }: StatedTimes): string | null {
  const start = from === 'lamination' ? laminatedAt : printedAt;
  return start === null ? null : new Date(Date.parse(start) + hours * 3_600_000).toISOString();
}
