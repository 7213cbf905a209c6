/**
 * The day of this computer's clock, also when it has 23 or 25 hours.
 * @param day '2026-03-09'
 * @returns its first instant and the first one of the next day, ISO 8601 in UTC; `null` for what is no day
 */
export function dayBounds(day: string): { from: string; to: string } | null {
  const start = new Date(`${day}T00:00:00`);
  if (Number.isNaN(start.getTime())) return null;
  return { from: start.toISOString(), to: new Date(start.getFullYear(), start.getMonth(), start.getDate() + 1).toISOString() };
}
