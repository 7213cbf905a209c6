/** Range of the single values, mN/m, above which the standard wants them reported one by one. */
export const unevenAboveMNm = 1;

/**
 * The wetting tension as ASTM D2578 reports it: the mean of the highest fluids that held, to the nearest 0.5 mN/m (§12.1).
 * The standard leaves ties open; here they go up (37.75 → 38.0).
 *
 * @param held highest fluid that held at each position, mN/m; at least one
 * @returns mN/m, or `null` where the values differ by more than 1 mN/m and are to be reported one by one (§12.2)
 */
export function reportedWettingTension(held: readonly number[]): number | null {
  if (heldRange(held) > unevenAboveMNm) return null;
  const mean = held.reduce((sum, value) => sum + value, 0) / held.length;
  // The tiny addend keeps a tie a tie when the mean of decimals falls a hair below it.
  return Math.floor(mean * 2 + 0.5 + 1e-9) / 2;
}

/** Largest minus smallest, mN/m, without the rounding errors of decimals: 38.1 − 37.1 does not exceed 1. */
export function heldRange(held: readonly number[]): number {
  return Number((Math.max(...held) - Math.min(...held)).toFixed(6));
}
