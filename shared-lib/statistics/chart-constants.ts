import gammaln from '@stdlib/math-base-special-gammaln';
import { integrate } from './gauss-legendre.ts';
import { normalRangeUpperTail } from './studentized-range.ts';

export interface ChartConstants {
  /** Mean and standard deviation of the range of n normal readings, in σ. */
  d2: number;
  d3: number;
  /** Mean of their standard deviation, in σ. */
  c4: number;
}

/** Ranges beyond this many σ do not occur. */
const WIDEST = 14;

/**
 * Constants of control charts for subgroups of `n`, computed from the distributions of range and standard deviation.
 * @throws RangeError unless n is whole, 2 to 25 (beyond, the range says too little).
 * Source: L. H. C. Tippett, Biometrika 17 (1925) 364; ISO 7870-2.
 */
export function chartConstants(n: number): ChartConstants {
  if (!Number.isInteger(n) || n < 2 || n > 25) throw new RangeError(`Subgroups hold 2 to 25 readings, not ${n}.`);
  const d2 = integrate((w) => normalRangeUpperTail(w, n), 0, WIDEST, 4);
  const meanSquare = integrate((w) => 2 * w * normalRangeUpperTail(w, n), 0, WIDEST, 4);
  return { d2, d3: Math.sqrt(meanSquare - d2 * d2), c4: c4Of(n) };
}

/** Mean of the standard deviation of n normal readings, in σ. */
export function c4Of(n: number): number {
  return Math.sqrt(2 / (n - 1)) * Math.exp(gammaln(n / 2) - gammaln((n - 1) / 2));
}
