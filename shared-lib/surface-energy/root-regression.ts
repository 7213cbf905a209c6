/** Least squares for coefficients that are square roots of energies and so must not be negative. */
export interface RootRegression {
  /** Writes the coefficients; those that would come out negative are zero and the others fitted again without them. */
  fit(ordinates: Float64Array, coefficients: Float64Array): void;
  /** Writes the plain least-squares coefficients, whatever their sign. */
  fitUnconstrained(ordinates: Float64Array, coefficients: Float64Array): void;
}

interface Subset {
  columns: number[];
  /** Pseudo-inverse, one row per column of the subset, the rows behind one another. */
  inverse: Float64Array;
}

/**
 * Non-negative least squares with few columns: every subset of columns is inverted once, so that each fit is a handful of
 * products. The design must have full column rank.
 *
 * @param design one row per liquid, non-negative entries
 */
export function rootRegression(design: readonly (readonly number[])[]): RootRegression {
  const columns = design[0]!.length;
  const subsets = allSubsets(columns).map((chosen) => ({ columns: chosen, inverse: Float64Array.from(pseudoInverse(design, chosen).flat()) }));
  const full = subsets[0]!;
  const trial = new Float64Array(columns);

  return {
    fitUnconstrained: (ordinates, coefficients) => apply(full, ordinates, coefficients),
    fit: (ordinates, coefficients) => {
      apply(full, ordinates, coefficients);
      if (!hasNegative(coefficients)) return;
      let best = Infinity;
      for (const subset of subsets) {
        apply(subset, ordinates, trial);
        if (hasNegative(trial)) continue;
        const squares = residualSquares(design, ordinates, trial);
        if (squares < best) {
          best = squares;
          coefficients.set(trial);
        }
      }
    },
  };
}

function apply({ columns, inverse }: Subset, ordinates: Float64Array, coefficients: Float64Array): void {
  if (columns.length < coefficients.length) coefficients.fill(0);
  const rows = ordinates.length;
  for (let j = 0; j < columns.length; j++) {
    let sum = 0;
    for (let i = 0; i < rows; i++) sum += inverse[j * rows + i]! * ordinates[i]!;
    coefficients[columns[j]!] = sum;
  }
}

function hasNegative(values: Float64Array): boolean {
  for (const value of values) if (value < 0) return true;
  return false;
}

function residualSquares(design: readonly (readonly number[])[], ordinates: Float64Array, coefficients: Float64Array): number {
  let squares = 0;
  for (let i = 0; i < ordinates.length; i++) {
    let residual = ordinates[i]!;
    for (let j = 0; j < coefficients.length; j++) residual -= design[i]![j]! * coefficients[j]!;
    squares += residual * residual;
  }
  return squares;
}

/** Column subsets, the full one first; the empty one is left out, one column always fits. */
function allSubsets(columns: number): number[][] {
  const subsets: number[][] = [];
  for (let mask = (1 << columns) - 1; mask > 0; mask--) {
    subsets.push(Array.from({ length: columns }, (_, column) => column).filter((column) => mask & (1 << column)));
  }
  return subsets;
}

/** (XᵀX)⁻¹Xᵀ of the chosen columns by Gram–Schmidt: X = QR, so the inverse is R⁻¹Qᵀ. */
function pseudoInverse(design: readonly (readonly number[])[], chosen: number[]): number[][] {
  const q: number[][] = [];
  const r: number[][] = chosen.map(() => chosen.map(() => 0));
  chosen.forEach((column, j) => {
    const vector = design.map((row) => row[column]!);
    for (let k = 0; k < j; k++) {
      r[k]![j] = dot(q[k]!, vector);
      vector.forEach((value, i) => (vector[i] = value - r[k]![j]! * q[k]![i]!));
    }
    r[j]![j] = Math.sqrt(dot(vector, vector));
    q.push(vector.map((value) => (r[j]![j] === 0 ? 0 : value / r[j]![j]!)));
  });
  const inverse: number[][] = chosen.map(() => []);
  for (let j = chosen.length - 1; j >= 0; j--) {
    inverse[j] = q[j]!.map((value, i) => {
      let sum = value;
      for (let k = j + 1; k < chosen.length; k++) sum -= r[j]![k]! * inverse[k]![i]!;
      return r[j]![j] === 0 ? 0 : sum / r[j]![j]!;
    });
  }
  return inverse;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * b[index]!, 0);
}
