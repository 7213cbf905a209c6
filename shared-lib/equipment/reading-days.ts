/** '2026-03-09', '2026-03-09 and 2026-03-10', '2026-03-09 and 3 other days, the last of them 2026-03-20'. @param days in order, at least one */
export function daysInWords(days: readonly string[]): string {
  if (days.length <= 2) return days.join(' and ');
  return `${days[0]} and ${days.length - 1} other days, the last of them ${days.at(-1)}`;
}
