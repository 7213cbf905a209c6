/**
 * Condition number of a design matrix whose rows are each scaled to length 1: the largest singular value over the smallest,
 * by Jacobi rotations of its columns (Golub & Van Loan, Matrix Computations, one-sided Jacobi).
 *
 * @returns 1 for equations that do not disturb each other, Infinity for equations that say the same
 */
export function conditionNumber(rows: readonly (readonly number[])[]): number {
  const columns = rows[0]!.length;
  const matrix = rows.map((row) => {
    const length = Math.hypot(...row);
    return row.map((value) => (length === 0 ? 0 : value / length));
  });
  for (let sweep = 0; sweep < 60; sweep++) {
    let rotated = false;
    for (let p = 0; p < columns; p++) {
      for (let q = p + 1; q < columns; q++) rotated = orthogonalise(matrix, p, q) || rotated;
    }
    if (!rotated) break;
  }
  const singular = Array.from({ length: columns }, (_, column) => Math.hypot(...matrix.map((row) => row[column]!)));
  const smallest = Math.min(...singular);
  const largest = Math.max(...singular);
  return rows.length < columns || smallest <= largest * 1e-12 ? Infinity : largest / smallest;
}

/** Turns columns `p` and `q` until they stand at right angles; false when they already do. */
function orthogonalise(matrix: number[][], p: number, q: number): boolean {
  let pp = 0;
  let qq = 0;
  let pq = 0;
  for (const row of matrix) {
    pp += row[p]! ** 2;
    qq += row[q]! ** 2;
    pq += row[p]! * row[q]!;
  }
  if (Math.abs(pq) <= 1e-15 * Math.sqrt(pp * qq) || pq === 0) return false;
  const zeta = (qq - pp) / (2 * pq);
  const tangent = (zeta < 0 ? -1 : 1) / (Math.abs(zeta) + Math.hypot(1, zeta));
  const cosine = 1 / Math.hypot(1, tangent);
  const sine = cosine * tangent;
  for (const row of matrix) {
    const left = row[p]!;
    const right = row[q]!;
    row[p] = cosine * left - sine * right;
    row[q] = sine * left + cosine * right;
  }
  return true;
}
