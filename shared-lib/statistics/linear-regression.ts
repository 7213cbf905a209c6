import { studentTQuantile } from './distributions.ts';
import { factorise, inverseOfGram, solveUpper } from './householder.ts';
import { refineCoefficients } from './refine-coefficients.ts';
import { compensatedSum } from './summarise.ts';

export interface LinearFit {
  /** With an intercept, it comes first. */
  coefficients: number[];
  /** `null` without degrees of freedom. */
  standardErrors: number[] | null;
  residualSd: number | null;
  residualSumOfSquares: number;
  /** About the mean with an intercept, about zero without; `null` where y does not vary. */
  rSquared: number | null;
  /** F of the whole regression; `null` without degrees of freedom or for an exact fit, where it is infinite. */
  f: number | null;
  /** Degrees of freedom of the residuals, and of the regression. */
  degreesOfFreedom: number;
  regressionDegreesOfFreedom: number;
  covariance: number[][] | null;
  intercept: boolean;
}

export interface LinearPrediction {
  value: number;
  low: number | null;
  high: number | null;
  predictionLow: number | null;
  predictionHigh: number | null;
}

/** Share of a scaled column's length left after the others are taken out, below which it says nothing of its own. */
const DEPENDENT = 1e-13;

/**
 * Ordinary or weighted least squares by Householder QR of centred and scaled columns, refined in twice the working
 * precision.
 * @param columns one list per predictor, each as long as `y`; none with an intercept fits the mean.
 * @param options `weights` of the squared residuals, e.g. 1/variance up to a factor.
 * @throws RangeError for lists that do not match, fewer points than coefficients, values that are not finite, or
 *   predictors that follow from one another.
 */
export function fitLinear(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  options: { intercept: boolean; weights?: readonly number[] },
): LinearFit {
  checkInput(columns, y, options);
  const { intercept } = options;
  const weights = options.weights ?? y.map(() => 1);
  const roots = weights.map(Math.sqrt);
  const totalWeight = compensatedSum(weights);
  const centreOf = (values: readonly number[]) => (intercept ? compensatedSum(values.map((value, i) => value * weights[i]!)) / totalWeight : 0);
  const centres = columns.map(centreOf);
  const yCentre = centreOf(y);
  const centred = columns.map((column, j) => column.map((value, i) => (value - centres[j]!) * roots[i]!));
  const sizes = centred.map((column) => Math.sqrt(compensatedSum(column.map((value) => value * value))));
  if (!sizes.every(Number.isFinite)) throw new RangeError('The predictors are too large to compute with; give them in another unit.');
  if (sizes.some((size) => size === 0)) throw new RangeError('A predictor does not vary, so its coefficient cannot be told from the intercept.');
  const scaled = centred.map((column, j) => column.map((value) => value / sizes[j]!));
  const right = y.map((value, i) => (value - yCentre) * roots[i]!);

  const first = factorise(scaled, right);
  if (first.upper.some((row, k) => Math.abs(row[k]!) < DEPENDENT)) {
    throw new RangeError('The predictors follow from one another, so their coefficients cannot be told apart.');
  }
  const slopes = solveUpper(first.upper, first.rotated).map((value, j) => value / sizes[j]!);
  const { coefficients, residuals } = refineCoefficients(columns, y, weights, intercept, { upper: first.upper, sizes, centres, slopes, yCentre });
  const total = compensatedSum(right.map((value) => value * value));
  const summed = compensatedSum(residuals.map((value, i) => value * value * weights[i]!));
  // What remains of an exact fit is the rounding of y itself.
  const rounding = y.length * (Number.EPSILON * Math.max(...y.map((value, i) => Math.abs(value) * roots[i]!))) ** 2;
  const residualSumOfSquares = summed <= 16 * rounding ? 0 : summed;
  const degreesOfFreedom = y.length - coefficients.length;
  const residualSd = degreesOfFreedom > 0 ? Math.sqrt(residualSumOfSquares / degreesOfFreedom) : null;
  const covariance = residualSd === null ? null : covarianceOf(first.upper, sizes, centres, residualSd, intercept, totalWeight);
  return {
    coefficients,
    standardErrors: covariance?.map((row, i) => Math.sqrt(row[i]!)) ?? null,
    residualSd,
    residualSumOfSquares,
    rSquared: total > 0 ? 1 - residualSumOfSquares / total : null,
    f: columns.length > 0 && residualSd ? (total - residualSumOfSquares) / columns.length / residualSd ** 2 : null,
    degreesOfFreedom,
    regressionDegreesOfFreedom: columns.length,
    covariance,
    intercept,
  };
}

/** The fitted value at one setting of the predictors, with its confidence interval and that of a further reading of weight 1. */
export function predictLinear(fit: LinearFit, at: readonly number[], level = 0.95): LinearPrediction {
  const point = fit.intercept ? [1, ...at] : [...at];
  if (point.length !== fit.coefficients.length) throw new RangeError(`The fit has ${fit.regressionDegreesOfFreedom} predictors, not ${at.length}.`);
  const value = compensatedSum(point.map((x, i) => x * fit.coefficients[i]!));
  if (fit.covariance === null || fit.residualSd === null) return { value, low: null, high: null, predictionLow: null, predictionHigh: null };
  const variance = Math.max(0, compensatedSum(point.flatMap((a, i) => point.map((b, j) => a * b * fit.covariance![i]![j]!))));
  const t = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
  const reach = t * Math.sqrt(variance);
  const farther = t * Math.sqrt(variance + fit.residualSd ** 2);
  return { value, low: value - reach, high: value + reach, predictionLow: value - farther, predictionHigh: value + farther };
}

function covarianceOf(upper: number[][], sizes: number[], centres: number[], residualSd: number, intercept: boolean, totalWeight: number): number[][] {
  const variance = residualSd * residualSd;
  const slopes = inverseOfGram(upper).map((row, i) => row.map((value, j) => (variance * value) / (sizes[i]! * sizes[j]!)));
  if (!intercept) return slopes;
  const mixed = slopes.map((row) => -compensatedSum(row.map((value, j) => value * centres[j]!)));
  const corner = variance / totalWeight - compensatedSum(mixed.map((value, j) => value * centres[j]!));
  return [[corner, ...mixed], ...slopes.map((row, i) => [mixed[i]!, ...row])];
}

function checkInput(columns: readonly (readonly number[])[], y: readonly number[], { intercept, weights }: { intercept: boolean; weights?: readonly number[] }): void {
  if (columns.some((column) => column.length !== y.length) || (weights && weights.length !== y.length)) {
    throw new RangeError('Each y needs its value of every predictor, and its weight where weights are given.');
  }
  const count = columns.length + (intercept ? 1 : 0);
  if (count === 0) throw new RangeError('A regression needs a predictor or an intercept.');
  if (y.length < count) throw new RangeError(`A regression with ${count} coefficients needs at least as many points, not ${y.length}.`);
  if (![...y, ...columns.flat()].every(Number.isFinite)) throw new RangeError('Predictors and readings must be finite numbers.');
  if (weights?.some((weight) => !(weight > 0 && Number.isFinite(weight)))) throw new RangeError('Weights must be positive.');
}
