import { clopperPearson } from './clopper-pearson.ts';

export interface Counted {
  count: number;
  /** Area, length or time in which the count was made, above 0; of both counts in the same unit. */
  exposure: number;
}

/**
 * Ratio of the rates of two counts, `after` ÷ `before`, with its exact interval: given their sum, the one count is binomial, and
 * its share leads back to the ratio. An end that the counts leave open (nothing counted on one side) is `null`; so is the
 * value where `before` is 0. `null` altogether where nothing was counted at all.
 * The counts are taken as independent; where the same places were counted twice the interval is rather too wide.
 * @throws RangeError for counts that are not whole.
 * Source: conditional test of two Poisson rates, J. Przyborowski, H. Wilenski, Biometrika 31 (1940) 313, with the interval of
 * Clopper & Pearson 1934.
 */
export function rateRatio(before: Counted, after: Counted, level = 0.95): { value: number | null; low: number; high: number | null } | null {
  const total = before.count + after.count;
  if (total === 0) return null;
  const share = clopperPearson(after.count, total, level);
  const ratio = (of: number) => (of / (1 - of)) * (before.exposure / after.exposure);
  return {
    value: before.count === 0 ? null : (after.count * before.exposure) / (before.count * after.exposure),
    low: ratio(share.low),
    high: share.high >= 1 ? null : ratio(share.high),
  };
}
