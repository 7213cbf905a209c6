import { accurateDot } from './accurate-dot.ts';
import { solveLower, solveUpper } from './householder.ts';
import { compensatedSum } from './summarise.ts';

/** A first solution and the factors that it came from: `upper` is R of the columns centred by `centres` and divided by `sizes`. */
export interface RoughFit {
  upper: number[][];
  sizes: number[];
  centres: number[];
  slopes: number[];
  yCentre: number;
}

const REFINEMENTS = 2;

/**
 * Improves the coefficients on the columns as given: centring and scaling have rounded them, and large residuals would
 * hide small coefficients. Coefficients, residuals and normal equations are carried in twice the working precision.
 */
export function refineCoefficients(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[],
  intercept: boolean,
  { upper, sizes, centres, slopes, yCentre }: RoughFit,
): { coefficients: number[]; residuals: number[] } {
  const design = intercept ? [y.map(() => 1), ...columns] : columns;
  const totalWeight = compensatedSum(weights);
  const heads = intercept ? [yCentre - compensatedSum(slopes.map((slope, j) => slope * centres[j]!)), ...slopes] : [...slopes];
  const tails = heads.map(() => 0);
  const residualAt = (i: number) => accurateDot([1, ...heads, ...tails], [y[i]!, ...design.map((column) => -column[i]!), ...design.map((column) => -column[i]!)]);
  let residuals = y.map((_, i) => residualAt(i));
  for (let round = 0; round < REFINEMENTS; round++) {
    const weighted = [...residuals.map(([head], i) => head * weights[i]!), ...residuals.map(([, tail], i) => tail * weights[i]!)];
    const gradient = design.map((column) => accurateDot([...column, ...column], weighted)[0]);
    const slopeGradient = intercept ? gradient.slice(1).map((value, j) => value - centres[j]! * gradient[0]!) : gradient;
    const step = solveUpper(upper, solveLower(upper, slopeGradient.map((value, j) => value / sizes[j]!))).map((value, j) => value / sizes[j]!);
    if (intercept) step.unshift(gradient[0]! / totalWeight - compensatedSum(step.map((value, j) => value * centres[j]!)));
    step.forEach((value, k) => {
      const sum = heads[k]! + value;
      tails[k]! += heads[k]! - sum + value;
      heads[k] = sum;
    });
    residuals = y.map((_, i) => residualAt(i));
  }
  return { coefficients: heads.map((head, k) => head + tails[k]!), residuals: residuals.map(([head]) => head) };
}
