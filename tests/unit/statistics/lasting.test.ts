import { describe, expect, it } from 'vitest';
import { summariseLasting } from '../../../shared-lib/statistics/lasting.ts';

const of = (...readings: (number | [number])[]) =>
  summariseLasting(readings.map((reading) => (typeof reading === 'number' ? { value: reading, ended: true } : { value: reading[0], ended: false })), 'strokes', 0.95);

describe('what lasts', () => {
  it('without lower bounds: geometric mean with the t interval of the logarithms', () => {
    // ln 10, ln 20, ln 40: mean ln 20, s = ln 2, t(0.975; 2) = 4.30265 (handbook table).
    const { typical, median, least } = of(10, 20, 40);
    expect(typical.value).toBeCloseTo(20, 9);
    expect(typical.high! / 20).toBeCloseTo(Math.exp((4.30265 * Math.log(2)) / Math.sqrt(3)), 4);
    expect(median.value).toBe(20);
    expect(least.value).toBe(10);
  });

  it('nothing ended: lower bounds, no interval', () => {
    const { typical, median, least, notes } = of([100], [100], [100]);
    for (const result of [typical, median, least]) expect(result).toMatchObject({ bound: 'at-least', high: null, level: null });
    expect(typical.value).toBeCloseTo(100, 9);
    expect(notes[0]).toBe('3 of 3 were still whole when the test was stopped and count as lower bounds.');
  });

  it('a specimen stopped first leaves the weakest open up to the first that ended', () => {
    expect(of([50], 80, 120).least).toMatchObject({ low: 50, high: 80, bound: 'between' });
  });

  it('a lower bound raises the typical value and never counts as an end', () => {
    expect(of(10, 20, 40, [40]).typical.value!).toBeGreaterThan(of(10, 20, 40, 40).typical.value!);
  });

  it('one or all alike show no spread', () => {
    expect(of(30).typical).toMatchObject({ low: null, high: null, level: null });
    expect(of(30, 30, 30).typical).toMatchObject({ low: null, high: null });
    expect(of(30, 30, 30).notes.join(' ')).toContain('All readings are alike');
  });

  it('two of which one is a bound: at least the one', () => {
    expect(of(80, [100]).typical).toMatchObject({ bound: 'at-least' });
    expect(of(80, [100]).typical.value).toBeCloseTo(80, 9);
  });

  it('refuses what lasted nothing', () => expect(() => of(0, 5)).toThrow(RangeError));
});
