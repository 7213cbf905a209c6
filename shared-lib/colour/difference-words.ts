import type { ResultValue } from '../calculation/result.ts';

/** Smaller differences print as zero at one decimal and bear no word. */
const least = 0.05;

/** The words of each difference sample − reference: for below zero, for above. */
const words = {
  deltaL: ['darker', 'lighter'],
  deltaA: ['greener', 'redder'],
  deltaB: ['bluer', 'yellower'],
  deltaC: ['duller', 'stronger'],
} as const;

/**
 * How a sample differs from its reference, e.g. 'darker, redder, duller'. A difference has its word when it is 0.05 or
 * more and, where it has an interval, when that leaves no doubt of its sign.
 */
export function differenceInWords(differences: Record<keyof typeof words, ResultValue>): string {
  const spoken = (Object.keys(words) as (keyof typeof words)[]).flatMap((key) => {
    const { value, low, high } = differences[key];
    if (value === null || Math.abs(value) < least) return [];
    if (low !== null && high !== null && low <= 0 && high >= 0) return [];
    return [words[key][value < 0 ? 0 : 1]];
  });
  return spoken.length === 0 ? 'no difference to name' : spoken.join(', ');
}
