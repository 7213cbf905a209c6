import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Bound, ResultValue } from '../../../shared-lib/calculation/result.ts';
import type { Limit } from '../../../shared-lib/method/method.ts';
import type { VerdictRule } from '../../../shared-lib/method/property-verdict.ts';
import { verdictReason } from '../../../shared-lib/method/verdict-reason.ts';
import { judge } from '../../../shared-lib/method/verdict.ts';

const limit = (lower: number | null, upper: number | null): Limit => ({ property: 'wettingTension', lower, upper, source: 'customer' });

function result(value: number | null, low: number | null, high: number | null, bound: Bound = 'exact', n = 5): ResultValue {
  return { value, unit: 'mN/m', low, high, level: 0.95, n, bound };
}

const word = (given: ResultValue, on: Limit, rule: VerdictRule) => judge(given, on, rule).verdict;

describe('judge, simple rule', () => {
  it.each([
    ['above a lower limit', 39, 38, null, 'meets'],
    ['exactly on a lower limit', 38, 38, null, 'meets'],
    ['below a lower limit', 37.9, 38, null, 'falls short'],
    ['exactly on an upper limit', 40, null, 40, 'meets'],
    ['above an upper limit', 40.1, null, 40, 'falls short'],
    ['inside two limits', 39, 38, 40, 'meets'],
    ['a limit with no width', 38, 38, 38, 'meets'],
  ] as const)('%s', (_what, value, lower, upper, expected) => {
    expect(word(result(value, null, null), limit(lower, upper), 'simple')).toBe(expected);
  });

  it('looks at the value alone, whatever its interval', () => {
    expect(word(result(38.5, 30, 47), limit(38, null), 'simple')).toBe('meets');
  });

  it('is undecided without a value', () => {
    expect(word(result(null, null, null), limit(38, null), 'simple')).toBe('undecided');
  });
});

describe('judge, guarded rule', () => {
  it.each([
    ['the whole interval above', 38.1, 40, 38, null, 'meets'],
    ['an end exactly on the limit', 38, 40, 38, null, 'meets'],
    ['the interval across', 37.9, 40, 38, null, 'undecided'],
    ['the upper end exactly on a lower limit', 36, 38, 38, null, 'undecided'],
    ['the whole interval below', 36, 37.9, 38, null, 'falls short'],
    ['the whole interval above an upper limit', 41, 42, null, 40, 'falls short'],
    ['inside two limits', 38.2, 39.5, 38, 40, 'meets'],
    ['wider than the limits', 37, 41, 38, 40, 'undecided'],
  ] as const)('%s', (_what, low, high, lower, upper, expected) => {
    expect(word(result((low + high) / 2, low, high), limit(lower, upper), 'guarded')).toBe(expected);
  });

  it('is undecided without an interval and says so', () => {
    const given = result(45, null, null);
    const verdict = judge(given, limit(38, null), 'guarded');
    expect(verdict.verdict).toBe('undecided');
    expect(verdict.probability).toBeNull();
    expect(verdictReason(given, verdict, 'guarded')).toContain('this result has none');
  });

  it('needs only the side of the interval that the limit asks for', () => {
    expect(word(result(40, 39, null), limit(38, null), 'guarded')).toBe('meets');
    expect(word(result(40, 39, null), limit(null, 45), 'guarded')).toBe('undecided');
    expect(word(result(40, null, 44), limit(null, 45), 'guarded')).toBe('meets');
  });
});

describe.each(['simple', 'guarded'] as const)('judge, bounds under the %s rule', (rule) => {
  it('a lower bound above the lower limit meets; one below is undecided', () => {
    expect(word(result(3.1, null, null, 'at-least'), limit(3, null), rule)).toBe('meets');
    expect(word(result(3, null, null, 'at-least'), limit(3, null), rule)).toBe('meets');
    expect(word(result(2.9, null, null, 'at-least'), limit(3, null), rule)).toBe('undecided');
  });

  it('a lower bound says nothing good about an upper limit', () => {
    expect(word(result(3.1, null, null, 'at-least'), limit(null, 4), rule)).toBe('undecided');
    expect(word(result(4.1, null, null, 'at-least'), limit(null, 4), rule)).toBe('falls short');
    expect(word(result(3.5, null, null, 'at-least'), limit(3, 4), rule)).toBe('undecided');
  });

  it('an upper bound is the mirror image', () => {
    expect(word(result(3.9, null, null, 'at-most'), limit(null, 4), rule)).toBe('meets');
    expect(word(result(4.1, null, null, 'at-most'), limit(null, 4), rule)).toBe('undecided');
    expect(word(result(3.9, null, null, 'at-most'), limit(4, null), rule)).toBe('falls short');
  });

  it('a bracket counts as a whole; its middle is no estimate', () => {
    expect(word(result(39, 38, 40, 'between'), limit(38, null), rule)).toBe('meets');
    expect(word(result(39, 37, 41, 'between'), limit(38, null), rule)).toBe('undecided');
    expect(word(result(36, 35, 37, 'between'), limit(38, null), rule)).toBe('falls short');
    expect(judge(result(39, 38, 40, 'between'), limit(38, null), rule).probability).toBeNull();
  });

  // ASTM D2578-09 §11.4: a fluid whose film breaks within 2 s is above the wetting tension of the film.
  it('a lower limit at the fluid that retracted is not met, where the high end is excluded', () => {
    const below = (value: ResultValue, on: Limit) => judge(value, on, rule, null, true).verdict;
    expect(below(result(37, 36, 38, 'between'), limit(38, null))).toBe('falls short');
    expect(below(result(38, null, null, 'at-most'), limit(38, null))).toBe('falls short');
    expect(below(result(37, 36, 38, 'between'), limit(37, null))).toBe('undecided');
    expect(below(result(37, 36, 38, 'between'), limit(36, null))).toBe('meets');
    expect(below(result(37, 36, 38, 'between'), limit(null, 38))).toBe('meets');
    expect(word(result(37, 36, 38, 'between'), limit(38, null), rule)).toBe('undecided');
  });
});

describe('judge', () => {
  it('the guarded rule uses the interval of a lower bound where it has one', () => {
    expect(word(result(3.1, 2.8, null, 'at-least'), limit(3, null), 'simple')).toBe('meets');
    expect(word(result(3.1, 2.8, null, 'at-least'), limit(3, null), 'guarded')).toBe('undecided');
  });

  it.each([[null], [limit(null, null)]])('without a limit the word is no limit', (none) => {
    expect(judge(result(39, 38, 40), none, 'guarded')).toMatchObject({ verdict: 'no limit', probability: null });
  });

  it('refuses crossed limits', () => {
    expect(() => judge(result(39, 38, 40), limit(40, 38), 'simple')).toThrow(InputError);
  });

  it('names the property and keeps the limit', () => {
    expect(judge(result(39, 38, 40), limit(38, null), 'simple')).toMatchObject({ property: 'wettingTension', limit: limit(38, null) });
  });

  it('gives a sentence for every outcome', () => {
    const cases: [ResultValue, Limit, VerdictRule, RegExp][] = [
      [result(39, 38.5, 40), limit(38, null), 'guarded', /^Meets: the whole interval/],
      [result(39, 38.5, 40), limit(38, null), 'simple', /^Meets: the value/],
      [result(37, 36, 37.5), limit(38, null), 'guarded', /^Falls short: the whole interval/],
      [result(39, 37, 41), limit(38, null), 'guarded', /^Undecided: .*more readings/],
      [result(2.9, null, null, 'at-least'), limit(3, null), 'guarded', /^Undecided: everything from the lower bound .*open side/],
      [result(3.1, null, null, 'at-most'), limit(null, 3), 'guarded', /^Undecided: everything from the upper bound/],
      [result(39, 37, 41, 'between'), limit(38, null), 'simple', /^Undecided: the whole bracket .*narrower bracket/],
      [result(null, null, null), limit(38, null), 'simple', /no value/],
      [result(39, 38, 40), limit(null, null), 'simple', /^No limit/],
    ];
    for (const [given, on, rule, sentence] of cases) {
      expect(verdictReason(given, judge(given, on, rule), rule)).toMatch(sentence);
    }
  });
});

describe('probability of conformity', () => {
  const p = (given: ResultValue, on: Limit) => judge(given, on, 'guarded').probability;

  it('is (1 + level)/2 with the limit on an interval end, symmetric or not, t or normal', () => {
    for (const n of [0, 1, 2, 5, 40]) {
      for (const [low, high] of [[35, 45], [39, 45], [20, 41]] as const) {
        expect(p(result(40, low, high, 'exact', n), limit(low, null))).toBeCloseTo(0.975, 9);
        expect(p(result(40, low, high, 'exact', n), limit(null, high))).toBeCloseTo(0.975, 9);
        expect(p(result(40, low, high, 'exact', n), limit(low, high))).toBeCloseTo(0.95, 9);
        expect(p(result(40, low, high, 'exact', n), limit(40, null))).toBeCloseTo(0.5, 12);
      }
    }
  });

  it.each([
    ['no interval', result(40, null, null)],
    ['no width', result(40, 40, 40)],
    ['a stated range without a level', { ...result(40, 38, 42), level: null }],
    ['no value', result(null, 38, 42)],
    ['a bound', result(40, 38, null, 'at-least')],
  ])('cannot be given for %s', (_what, given) => {
    expect(p(given, limit(39, null))).toBeNull();
  });

  it('cannot be given when the side that the limit needs is missing', () => {
    expect(p(result(40, null, 42), limit(39, null))).toBeNull();
    expect(p(result(40, null, 42), limit(null, 41))).not.toBeNull();
  });

  it('treats a side of no width as certain', () => {
    expect(p(result(100, 90, 100), limit(null, 100.5))).toBe(1);
    expect(p(result(0, 0, 10), limit(-1, null))).toBe(1);
  });

  it('stays in 0–1, falls as a lower limit rises, and does not depend on the unit', () => {
    const place = fc.double({ min: -100, max: 100, noNaN: true });
    const half = fc.double({ min: 0.01, max: 50, noNaN: true });
    fc.assert(
      fc.property(place, half, half, place, half, fc.integer({ min: 1, max: 30 }), (value, down, up, lower, step, n) => {
        const at = (factor: number, lowerAt: number) =>
          p(result(value * factor, (value - down) * factor, (value + up) * factor, 'exact', n), limit(lowerAt * factor, null))!;
        const here = at(1, lower);
        expect(here).toBeGreaterThanOrEqual(0);
        expect(here).toBeLessThanOrEqual(1);
        expect(at(1, lower + step)).toBeLessThanOrEqual(here);
        expect(at(1000, lower)).toBeCloseTo(here, 6);
      }),
    );
  });

  it('meets under the guarded rule only with a probability of at least 0.95 at 95 %', () => {
    const place = fc.double({ min: -100, max: 100, noNaN: true });
    const half = fc.double({ min: 0.01, max: 50, noNaN: true });
    fc.assert(
      fc.property(place, half, half, place, half, (value, down, up, lower, width) => {
        const verdict = judge(result(value, value - down, value + up), limit(lower, lower + width), 'guarded');
        if (verdict.verdict === 'meets') expect(verdict.probability).toBeGreaterThanOrEqual(0.95 - 1e-9);
        if (verdict.verdict === 'falls short') expect(verdict.probability).toBeLessThanOrEqual(0.025 + 1e-9);
      }),
    );
  });
});
