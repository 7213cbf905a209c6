import { chiSquareQuantile, fQuantile } from './distributions.ts';

/** One mean square in a sum that makes up a variance component. */
export interface MeanSquareTerm {
  coefficient: number;
  meanSquare: number;
  degreesOfFreedom: number;
}

/**
 * Interval of a variance that is a sum or difference of mean squares: the modified large-sample interval; no end is
 * below zero.
 * Source: N. Ting, R. K. Burdick, F. A. Graybill, S. Jeyaratnam, T. C. Lu, J. Stat. Comput. Simul. 35 (1990) 135; for sums
 * alone F. A. Graybill, C.-M. Wang, J. Am. Stat. Assoc. 75 (1980) 869. Terms for pairs of like sign are left out.
 */
export function meanSquareInterval(terms: readonly MeanSquareTerm[], level: number): { value: number; low: number; high: number } {
  const alpha = (1 - level) / 2;
  const value = terms.reduce((sum, { coefficient, meanSquare }) => sum + coefficient * meanSquare, 0);
  const plus = terms.filter(({ coefficient }) => coefficient > 0);
  const minus = terms.filter(({ coefficient }) => coefficient < 0);
  const shrink = (df: number) => 1 - df / chiSquareQuantile(1 - alpha, df);
  const stretch = (df: number) => df / chiSquareQuantile(alpha, df) - 1;
  const size = ({ coefficient, meanSquare }: MeanSquareTerm) => Math.abs(coefficient) * meanSquare;

  const squares = (group: MeanSquareTerm[], factor: (df: number) => number) => group.reduce((sum, term) => sum + (factor(term.degreesOfFreedom) * size(term)) ** 2, 0);
  const crossed = (p: number, ofPlus: (df: number) => number, ofMinus: (df: number) => number) =>
    plus.reduce((sum, a) => sum + minus.reduce((part, b) => {
      const f = fQuantile(p, a.degreesOfFreedom, b.degreesOfFreedom);
      const weight = ((f - 1) ** 2 - (ofPlus(a.degreesOfFreedom) * f) ** 2 - ofMinus(b.degreesOfFreedom) ** 2) / f;
      return part + weight * size(a) * size(b);
    }, 0), 0);

  const below = squares(plus, shrink) + squares(minus, stretch) + crossed(1 - alpha, shrink, stretch);
  const above = squares(plus, stretch) + squares(minus, shrink) + crossed(alpha, stretch, shrink);
  return { value, low: Math.max(0, value - Math.sqrt(Math.max(0, below))), high: Math.max(0, value + Math.sqrt(Math.max(0, above))) };
}
