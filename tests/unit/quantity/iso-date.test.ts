import { describe, expect, it } from 'vitest';
import { daysAfter, daysBetween, isIsoDate } from '../../../shared-lib/quantity/iso-date.ts';

describe('a day of the calendar', () => {
  it.each(['2026-03-09', '2024-02-29', '2000-02-29', '1999-12-31'])('%s is one', (text) => expect(isIsoDate(text)).toBe(true));

  // 1900 was no leap year (Gregorian rule, ISO 8601:2019, 4.2.1).
  it.each(['2026-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '2026-3-9', '9.3.2026', '2026-03-09T00:00', '20260309', '', '+012026-03-09'])(
    "'%s' is none",
    (text) => expect(isIsoDate(text)).toBe(false),
  );

  it.each([
    ['2026-03-09', 0, '2026-03-09'],
    ['2026-02-27', 3, '2026-03-02'],
    ['2024-02-27', 3, '2024-03-01'],
    ['2025-12-31', 1, '2026-01-01'],
    // Across the change to summer time in Europe, 29 March 2026.
    ['2026-03-28', 2, '2026-03-30'],
  ])('%s and %i days is %s', (date, days, then) => {
    expect(daysAfter(date, days)).toBe(then);
    expect(daysBetween(date, then)).toBe(days);
  });
});
