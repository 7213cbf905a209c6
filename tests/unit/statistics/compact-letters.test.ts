import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compactLetters } from '../../../shared-lib/statistics/compact-letters.ts';

/** Any pattern of told-apart pairs, as a triangle of booleans. */
const pattern = fc.integer({ min: 2, max: 9 }).chain((count) =>
  fc.array(fc.boolean(), { minLength: (count * (count - 1)) / 2, maxLength: (count * (count - 1)) / 2 }).map((flags) => ({ count, flags })),
);

function differs(flags: boolean[], count: number) {
  return (a: number, b: number) => {
    const [low, high] = a < b ? [a, b] : [b, a];
    return flags[(low * (2 * count - low - 1)) / 2 + high - low - 1]!;
  };
}

const single = (letters: string): string[] => letters.match(/[a-z]\d*/g) ?? [];

describe('letters of trials', () => {
  it('two share a letter exactly when they are not told apart, and no letter is spare', () => {
    fc.assert(fc.property(pattern, ({ count, flags }) => {
      const apart = differs(flags, count);
      const order = Array.from({ length: count }, (_, i) => i);
      const letters = compactLetters(order, apart)!.map(single);
      for (const a of order) {
        expect(letters[a]!.length).toBeGreaterThan(0);
        for (const b of order) if (a !== b) expect(letters[a]!.some((letter) => letters[b]!.includes(letter))).toBe(!apart(a, b));
      }
      const groups = [...new Set(letters.flat())].map((letter) => order.filter((a) => letters[a]!.includes(letter)));
      for (const group of groups) {
        expect(groups.filter((other) => group.every((a) => other.includes(a)))).toHaveLength(1);
      }
    }));
  });

  it('starts with a at the first of the order', () => {
    expect(compactLetters([2, 0, 1], (a, b) => a === 2 || b === 2)).toEqual(['b', 'b', 'a']);
    // Piepho 2004, the usual pattern of overlapping groups: 1–2 and 2–3 alike, 1–3 apart.
    expect(compactLetters([0, 1, 2], (a, b) => Math.abs(a - b) === 2)).toEqual(['a', 'ab', 'b']);
    expect(compactLetters([0, 1], () => false)).toEqual(['a', 'a']);
  });

  it('gives up where nobody could read them', () => {
    const order = Array.from({ length: 200 }, (_, i) => i);
    expect(compactLetters(order, () => true)).toBeNull();
  });
});
