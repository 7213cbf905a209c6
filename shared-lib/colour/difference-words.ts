import type { ResultValue } from '../calculation/result.ts';

/** Smaller differences print as zero at one decimal and bear no word. */
const least = 0.05;
/** Nearer than this in every coordinate, as far as the scatter lets one say, a print is the same (common practice). */
const same = 0.5;

/** The words of each difference sample − reference: for below zero, for above. */
const words = {
  deltaL: ['darker', 'lighter'],
  deltaA: ['greener', 'redder'],
  deltaB: ['bluer', 'yellower'],
  deltaC: ['duller', 'stronger'],
} as const;

/**
 * What a sample is against its reference, e.g. 'darker, redder, duller'. A difference has its word when it is 0.05 or
 * more and, where it has an interval, when that leaves no doubt of its sign.
 */
export function differenceInWords(differences: Record<keyof typeof words, ResultValue>): string {
  const spoken = (Object.keys(words) as (keyof typeof words)[]).flatMap((key) => {
    const { value, low, high } = differences[key];
    if (value === null || Math.abs(value) < least) return [];
    if (low !== null && high !== null && low <= 0 && high >= 0) return [];
    return [words[key][value < 0 ? 0 : 1]];
  });
  if (spoken.length > 0) return spoken.join(', ');
  const reach = Math.max(...Object.values(differences).flatMap(({ value, low, high }) => [value, low, high].map((end) => Math.abs(end ?? 0))));
  return reach < same ? `the same within ${Math.max(least, Math.ceil(reach / least) * least).toFixed(2)}` : 'off in no clear direction';
}
