/** QR decomposition by Householder reflections, for least squares of a few columns. */
export interface Factorised {
  /** Upper triangle R, `columns.length` square, row by row. */
  upper: number[][];
  /** Qᵀb for the right-hand side b, as long as b. */
  rotated: Float64Array;
}

/**
 * Factorises the matrix whose columns are given and rotates `right` along. Neither is changed.
 * @param columns at most as many as there are rows.
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, 4th ed. (2013), 5.2.
 */
export function factorise(columns: readonly ArrayLike<number>[], right: ArrayLike<number>): Factorised {
  const work = columns.map((column) => Float64Array.from(column));
  const rotated = Float64Array.from(right);
  const n = columns.length;
  const upper = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let k = 0; k < n; k++) {
    const pivot = work[k]!;
    let norm = 0;
    for (let i = k; i < pivot.length; i++) norm = Math.hypot(norm, pivot[i]!);
    if (norm > 0) {
      const head = pivot[k]! > 0 ? -norm : norm;
      const reflector = pivot.slice(k);
      reflector[0]! -= head;
      let square = 0;
      for (const value of reflector) square += value * value;
      for (let j = k + 1; j < n; j++) reflect(work[j]!, reflector, k, square);
      reflect(rotated, reflector, k, square);
      upper[k]![k] = head;
    }
    for (let j = k + 1; j < n; j++) upper[k]![j] = work[j]![k]!;
  }
  return { upper, rotated };
}

function reflect(vector: Float64Array, reflector: Float64Array, from: number, square: number): void {
  let dot = 0;
  for (let i = 0; i < reflector.length; i++) dot += reflector[i]! * vector[from + i]!;
  const factor = (2 * dot) / square;
  for (let i = 0; i < reflector.length; i++) vector[from + i]! -= factor * reflector[i]!;
}

/** x with R·x = b for the upper triangle R. A zero on the diagonal gives values that are not finite. */
export function solveUpper(upper: readonly (readonly number[])[], right: ArrayLike<number>): number[] {
  const n = upper.length;
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k]!;
    for (let j = k + 1; j < n; j++) sum -= upper[k]![j]! * x[j]!;
    x[k] = sum / upper[k]![k]!;
  }
  return x;
}

/** x with Rᵀ·x = b for the upper triangle R. */
export function solveLower(upper: readonly (readonly number[])[], right: ArrayLike<number>): number[] {
  const x: number[] = [];
  for (let k = 0; k < upper.length; k++) {
    let sum = right[k]!;
    for (let j = 0; j < k; j++) sum -= upper[j]![k]! * x[j]!;
    x.push(sum / upper[k]![k]!);
  }
  return x;
}

/** (RᵀR)⁻¹ for the upper triangle R: the unscaled covariance of the coefficients. */
export function inverseOfGram(upper: readonly (readonly number[])[]): number[][] {
  const n = upper.length;
  const inverse = upper.map((_, k) => solveUpper(upper, upper.map((__, i) => (i === k ? 1 : 0))));
  return upper.map((_, i) => upper.map((__, j) => {
    let sum = 0;
    for (let k = Math.max(i, j); k < n; k++) sum += inverse[k]![i]! * inverse[k]![j]!;
    return sum;
  }));
}
