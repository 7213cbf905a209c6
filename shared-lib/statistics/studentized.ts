import { findRoot } from './find-root.ts';
import { averageOverScale } from './over-scale.ts';

/** The distribution of a statistic over an estimated spread: studentized range, Dunnett's largest |t|. */
export interface Studentized {
  /** Probability that the statistic exceeds `value` when the spread has `df` degrees of freedom; keeps its digits far out. */
  upperTail: (value: number, df: number) => number;
  /** The value that is exceeded with probability `p`. */
  upperQuantile: (p: number, df: number) => number;
  /** The same for many degrees of freedom, from 1 up: interpolated between a few (to 1e-8) where that is less work. */
  upperQuantiles: (p: number, dfs: readonly number[]) => number[];
}

const ORDER = 16;
const FEW = 24;
const ANGLES = Array.from({ length: ORDER }, (_, j) => (Math.PI * (j + 0.5)) / ORDER);
/** The tail has fallen below e^−300 before its argument is this large. */
const FARTHEST = 36;

/**
 * Studentizes a statistic whose upper tail is known for spread 1: averages the tail over the estimated spread.
 * The known tail is kept as Chebyshev series of its logarithm, piece by piece as needed, so that many p values with
 * many degrees of freedom cost one table.
 * @param logTail ln P(W > w) for w > 0, smooth.
 */
export function studentize(logTail: (w: number) => number): Studentized {
  const pieces = new Map<number, Float64Array>();
  const interpolated = (w: number): number => {
    if (w >= FARTHEST) return -Infinity;
    const piece = Math.floor(w);
    let coefficients = pieces.get(piece);
    if (!coefficients) {
      coefficients = chebyshev((x) => logTail(piece + (x + 1) / 2));
      pieces.set(piece, coefficients);
    }
    return clenshaw(coefficients, 2 * (w - piece) - 1);
  };
  const upperTail = (value: number, df: number) => (value <= 0 ? 1 : Math.min(1, averageOverScale((s) => interpolated(value * s), df)));
  const upperQuantile = (p: number, df: number) => {
    const excess = (value: number) => Math.log(upperTail(value, df) / p);
    let high = 4;
    while (excess(high) > 0) high *= 2;
    return findRoot((value) => (value === 0 ? -Math.log(p) : excess(value)), 0, high, 1e-12);
  };
  const upperQuantiles = (p: number, dfs: readonly number[]) => {
    if (dfs.length <= FEW) return dfs.map((df) => upperQuantile(p, df));
    const inverse = dfs.map((df) => 1 / df);
    const middle = (Math.max(...inverse) + Math.min(...inverse)) / 2;
    const half = Math.max(...inverse) - middle || middle;
    // The logarithm of the quantile is smooth in 1/df.
    const coefficients = chebyshev((x) => Math.log(upperQuantile(p, 1 / Math.max(middle + half * x, 1e-9))));
    return inverse.map((at) => Math.exp(clenshaw(coefficients, (at - middle) / half)));
  };
  return { upperTail, upperQuantile, upperQuantiles };
}

function chebyshev(f: (x: number) => number): Float64Array {
  const values = ANGLES.map((angle) => f(Math.cos(angle)));
  return Float64Array.from({ length: ORDER }, (_, k) => (2 / ORDER) * values.reduce((sum, value, j) => sum + value * Math.cos(k * ANGLES[j]!), 0));
}

function clenshaw(coefficients: Float64Array, x: number): number {
  let ahead = 0;
  let far = 0;
  for (let k = coefficients.length - 1; k > 0; k--) [ahead, far] = [2 * x * ahead - far + coefficients[k]!, ahead];
  return x * ahead - far + coefficients[0]! / 2;
}
