import { describe, expect, it } from 'vitest';
import { readMoment } from '../../../renderer/state/read-moment.ts';

const local = (...parts: [number, number, number, number, number]) => new Date(...parts).toISOString();

describe('readMoment', () => {
  it.each([
    ['2026-03-09 14:05', local(2026, 2, 9, 14, 5)],
    [' 2026-03-09 6:05 ', local(2026, 2, 9, 6, 5)],
    ['2026-03-09T23:59', local(2026, 2, 9, 23, 59)],
    ['2026-03-09', local(2026, 2, 9, 12, 0)],
    ['2024-02-29', local(2024, 1, 29, 12, 0)],
  ])('reads %s in local time, a day alone as its noon', (typed, value) => {
    expect(readMoment(typed)).toEqual({ value });
  });

  it('reads the empty field as not stated', () => {
    expect(readMoment('  ')).toEqual({ value: null });
  });

  it.each(['2026-02-30', '2026-13-01', '2026-03-09 24:00', '2026-03-09 12:60', '9.3.2026', '2026-3-9', 'yesterday'])('refuses %s', (typed) => {
    expect(readMoment(typed)).toEqual({ problem: 'Type a day and a time such as 2026-03-09 14:05.' });
  });
});
