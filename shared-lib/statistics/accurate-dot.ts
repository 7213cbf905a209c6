/** A number kept as the unevaluated sum of two doubles. */
export type DoubleDouble = [head: number, tail: number];

const SPLITTER = 134217729; // 2^27 + 1

/**
 * Σ aᵢ·bᵢ as if computed with twice the precision of a double.
 * Source: T. Ogita, S. M. Rump, S. Oishi, SIAM J. Sci. Comput. 26 (2005) 1955, algorithm Dot2.
 */
export function accurateDot(a: ArrayLike<number>, b: ArrayLike<number>): DoubleDouble {
  let head = 0;
  let tail = 0;
  for (let i = 0; i < a.length; i++) {
    const product = a[i]! * b[i]!;
    const sum = head + product;
    const part = sum - head;
    tail += head - (sum - part) + (product - part) + productError(a[i]!, b[i]!, product);
    head = sum;
  }
  const total = head + tail;
  return [total, head - total + tail];
}

/** a·b − fl(a·b), exactly (Dekker's splitting). */
function productError(a: number, b: number, product: number): number {
  const aScaled = SPLITTER * a;
  const aHigh = aScaled - (aScaled - a);
  const aLow = a - aHigh;
  const bScaled = SPLITTER * b;
  const bHigh = bScaled - (bScaled - b);
  const bLow = b - bHigh;
  const error = aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
  return Number.isFinite(error) ? error : 0;
}
