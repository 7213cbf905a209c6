/**
 * A moment as typed, in local time: '2026-03-09 14:05', or the day alone, which stands for noon.
 * @returns ISO 8601 in UTC, `null` for the empty field
 */
export function readMoment(typed: string): { value: string | null } | { problem: string } {
  const text = typed.trim();
  if (text === '') return { value: null };
  const [, year, month, day, hour = '12', minute = '00'] = /^(\d{4})-(\d{2})-(\d{2})(?:[ T](\d{1,2}):(\d{2}))?$/.exec(text) ?? [];
  const at = new Date(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute));
  const whole = at.getFullYear() === Number(year) && at.getMonth() === Number(month) - 1 && at.getDate() === Number(day) && at.getHours() === Number(hour) && at.getMinutes() === Number(minute);
  return whole ? { value: at.toISOString() } : { problem: 'Type a day and a time such as 2026-03-09 14:05.' };
}
