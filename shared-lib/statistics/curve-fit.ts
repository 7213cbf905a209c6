import { studentTQuantile } from './distributions.ts';
import { factorise, inverseOfGram } from './householder.ts';
import { minimiseResiduals } from './least-squares.ts';
import type { LeastSquaresMinimum, Residuals } from './least-squares.ts';

export type CurveModel = (x: number, parameters: readonly number[]) => number;

/** Points and the curve laid through them. */
export interface CurveProblem {
  model: CurveModel;
  x: readonly number[];
  y: readonly number[];
  /** Weight of each squared residual; default 1. */
  weights?: readonly number[];
  /** Bounds of the parameters, ±Infinity where open. */
  lower?: readonly number[];
  upper?: readonly number[];
}

export interface CurveFit {
  parameters: number[];
  /** `null` for a parameter held at a bound, or where there is no covariance. */
  standardErrors: (number | null)[];
  /** `null` without degrees of freedom or where the points cannot tell the parameters apart. Zero for one at a bound. */
  covariance: number[][] | null;
  residualSumOfSquares: number;
  /** `null` without degrees of freedom. */
  residualSd: number | null;
  degreesOfFreedom: number;
  converged: boolean;
  /** Starting points from which the curve could be computed. */
  startsTried: number;
}

export interface CurvePoint {
  value: number;
  /** Confidence interval of the curve; `null` without covariance. */
  low: number | null;
  high: number | null;
  /** Interval for one further reading of weight 1. */
  predictionLow: number | null;
  predictionHigh: number | null;
}

/** No single first damping reaches the minimum from every start of the NIST sets; the best of three does. */
const DAMPINGS = [1e-3, 1, 1e3];
/** Share of a scaled column's length left after the others are taken out, below which it says nothing of its own. */
const DEPENDENT = 1e-11;

/**
 * Least squares fit of a curve. Every start is tried with three dampings and the lowest sum of squares is kept;
 * standard errors are those of the linearised model. Reaches six digits and more on the NIST StRD sets.
 * @param problem with `start`: one or more starting points.
 * @throws RangeError for lists that do not match, fewer points than parameters, values that are not finite, or a curve
 *   that is not finite at any start.
 */
export function fitCurve(problem: CurveProblem & { start: readonly (readonly number[])[] }): CurveFit {
  checkProblem(problem);
  const residuals = curveResiduals(problem);
  let best: LeastSquaresMinimum | null = null;
  let startsTried = 0;
  for (const start of problem.start) {
    if (start.length > problem.x.length) throw new RangeError(`A curve with ${start.length} parameters needs at least as many points, not ${problem.x.length}.`);
    const clamped = start.map((value, i) => Math.min(Math.max(value, problem.lower?.[i] ?? -Infinity), problem.upper?.[i] ?? Infinity));
    if (!Array.from(residuals(clamped)).every(Number.isFinite)) continue;
    startsTried++;
    for (const damping of DAMPINGS) {
      const found = minimiseResiduals(residuals, clamped, { lower: problem.lower, upper: problem.upper, damping });
      if (best === null || isBetter(found, best)) best = found;
    }
  }
  if (best === null) throw new RangeError('The curve is not finite at any of the starting values.');
  return { ...spreadOf(best, problem.x.length), startsTried };
}

/** Weighted residuals model − reading at each point. */
export function curveResiduals({ model, x, y, weights }: CurveProblem): Residuals {
  const roots = weights?.map(Math.sqrt);
  return (parameters) => Float64Array.from(x, (at, i) => (model(at, parameters) - y[i]!) * (roots?.[i] ?? 1));
}

/** The curve at `x` with its confidence and prediction intervals, by the delta method. */
export function curveBand(fit: CurveFit, model: CurveModel, x: number, level = 0.95): CurvePoint {
  const value = model(x, fit.parameters);
  const variance = varianceOf(fit, (parameters) => model(x, parameters));
  if (variance === null || fit.residualSd === null) return { value, low: null, high: null, predictionLow: null, predictionHigh: null };
  const t = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
  const reach = t * Math.sqrt(variance);
  const farther = t * Math.sqrt(variance + fit.residualSd ** 2);
  return { value, low: value - reach, high: value + reach, predictionLow: value - farther, predictionHigh: value + farther };
}

/** Variance of a function of the fitted parameters by the delta method; `null` where it has none. */
export function varianceOf(fit: CurveFit, of: (parameters: readonly number[]) => number): number | null {
  const { covariance, parameters } = fit;
  if (covariance === null) return null;
  const gradient = parameters.map((value, i) => {
    if (covariance[i]![i] === 0) return 0;
    const h = 6e-6 * Math.max(Math.abs(value), Math.sqrt(covariance[i]![i]!));
    const at = (shift: number) => of(parameters.map((other, j) => (i === j ? value + shift : other)));
    return (at(h) - at(-h)) / (2 * h);
  });
  const variance = gradient.reduce((sum, a, i) => sum + gradient.reduce((row, b, j) => row + a * b * covariance[i]![j]!, 0), 0);
  return Number.isFinite(variance) ? Math.max(variance, 0) : null;
}

function isBetter(found: LeastSquaresMinimum, best: LeastSquaresMinimum): boolean {
  if (found.sumOfSquares < best.sumOfSquares * (1 - 1e-9)) return true;
  return found.converged && !best.converged && found.sumOfSquares <= best.sumOfSquares * (1 + 1e-9);
}

function spreadOf({ parameters, sumOfSquares, jacobian, atBound, converged }: LeastSquaresMinimum, points: number): Omit<CurveFit, 'startsTried'> {
  const degreesOfFreedom = points - parameters.length;
  const residualSd = degreesOfFreedom > 0 ? Math.sqrt(sumOfSquares / degreesOfFreedom) : null;
  const covariance = residualSd === null ? null : covarianceOf(jacobian, atBound, residualSd);
  return {
    parameters,
    standardErrors: parameters.map((_, i) => (covariance === null || atBound[i] ? null : Math.sqrt(covariance[i]![i]!))),
    covariance,
    residualSumOfSquares: sumOfSquares,
    residualSd,
    degreesOfFreedom,
    converged,
  };
}

function covarianceOf(jacobian: readonly Float64Array[], atBound: readonly boolean[], residualSd: number): number[][] | null {
  const free = jacobian.flatMap((_, i) => (atBound[i] ? [] : [i]));
  const sizes = free.map((i) => Math.sqrt(jacobian[i]!.reduce((sum, slope) => sum + slope * slope, 0)));
  if (sizes.some((size) => !(size > 0))) return null;
  const scaled = free.map((i, place) => jacobian[i]!.map((slope) => slope / sizes[place]!));
  const { upper } = factorise(scaled, new Float64Array(jacobian[0]!.length));
  if (upper.some((row, k) => Math.abs(row[k]!) < DEPENDENT)) return null;
  const inverse = inverseOfGram(upper);
  const covariance = jacobian.map(() => jacobian.map(() => 0));
  free.forEach((i, a) => free.forEach((j, b) => (covariance[i]![j] = (residualSd * residualSd * inverse[a]![b]!) / (sizes[a]! * sizes[b]!))));
  return covariance;
}

function checkProblem({ x, y, weights, start }: CurveProblem & { start: readonly (readonly number[])[] }): void {
  if (x.length !== y.length || (weights && weights.length !== x.length)) throw new RangeError('Each x needs its y, and its weight where weights are given.');
  if (start.length === 0) throw new RangeError('A curve fit needs starting values.');
  if (![...x, ...y, ...start.flat()].every(Number.isFinite)) throw new RangeError('Points and starting values must be finite numbers.');
  if (weights?.some((weight) => !(weight > 0 && Number.isFinite(weight)))) throw new RangeError('Weights must be positive.');
}
