import { curveResiduals, varianceOf } from './curve-fit.ts';
import type { CurveFit, CurveProblem } from './curve-fit.ts';
import { studentTQuantile } from './distributions.ts';
import { findRoot } from './find-root.ts';
import { minimiseResiduals } from './least-squares.ts';

export interface ProfileInterval {
  /** `null`: the points do not bound the quantity on this side within the range searched, or there is nothing to judge by. */
  low: number | null;
  high: number | null;
}

/** A quantity that follows from the parameters of a curve, given by the condition that holds when it is c. */
export interface CurveQuantity {
  /** At the fitted parameters. */
  value: number;
  /**
   * Zero exactly when the quantity of these parameters is c, and smooth in the parameters. For 'hours until the curve
   * reaches L': `(c, b) => model(c, b) - L`, which stays smooth where the hours themselves run off to infinity.
   */
  condition: (c: number, parameters: readonly number[]) => number;
}

/** Weight of the condition beside the residuals, both in units of their standard deviation. */
const PULL = 1e3;
/** Rounds in which the condition's remaining error is fed back (augmented Lagrangian). */
const ROUNDS = 2;
const DOUBLINGS = 40;

/**
 * Interval of a quantity that follows from the parameters of a fitted curve, by the profile of the sum of squares: all
 * values c for which the best curve that meets the condition has (RSS(c) − RSS_min)/s² ≤ t². Keeps its level where the
 * delta method's symmetric interval does not, and shows an open side where one is.
 * @param problem the points and the curve that were fitted.
 * @param fit the result of `fitCurve` for `problem`.
 * @param options `level`; `lowest` and `highest` value searched.
 * @throws RangeError when the quantity has no value at the fitted parameters.
 * Source: D. M. Bates, D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988), 6.1.
 */
export function profileInterval(
  problem: CurveProblem,
  fit: CurveFit,
  quantity: CurveQuantity,
  options: { level?: number; lowest?: number; highest?: number } = {},
): ProfileInterval {
  const { level = 0.95, lowest = -Infinity, highest = Infinity } = options;
  const { value, condition } = quantity;
  if (!Number.isFinite(value)) throw new RangeError('The quantity has no value at the fitted curve.');
  const residualSd = fit.residualSd;
  if (residualSd === null) return { low: null, high: null };
  if (residualSd === 0) return { low: value, high: value };

  const t = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
  const conditionSd = Math.sqrt(varianceOf(fit, (parameters) => condition(value, parameters)) ?? 0) || residualSd;
  const unit = standardError(quantity, fit, conditionSd);
  const residuals = curveResiduals(problem);
  const typical = fit.parameters.map((parameter, i) => Math.max(Math.abs(parameter), fit.standardErrors[i] ?? 0) || 1);

  /** The best curve for which the quantity is c, and by how much it exceeds t². */
  const constrained = (c: number, start: readonly number[]) => {
    let parameters = [...start];
    let feedback = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const offset = feedback;
      const scaled = (at: readonly number[]) => condition(c, at) / conditionSd;
      parameters = minimiseResiduals(
        (at) => [...Array.from(residuals(at), (residual) => residual / residualSd), PULL * (scaled(at) + offset)],
        parameters,
        { lower: problem.lower, upper: problem.upper, typical, maxIterations: 200 },
      ).parameters;
      feedback += scaled(parameters);
    }
    const sum = Array.from(residuals(parameters)).reduce((total, residual) => total + residual * residual, 0);
    return { parameters, excess: (sum - fit.residualSumOfSquares) / residualSd ** 2 - t * t };
  };

  const end = (direction: 1 | -1, limit: number): number | null => {
    let inside = { c: value, parameters: fit.parameters };
    for (let step = 0; step < DOUBLINGS; step++) {
      const wanted = value + direction * unit * 2 ** (step - 1);
      const c = direction > 0 ? Math.min(wanted, limit) : Math.max(wanted, limit);
      const outside = constrained(c, inside.parameters);
      if (outside.excess > 0) {
        const { c: near, parameters } = inside;
        const excess = (at: number) => (at === value ? -t * t : constrained(at, parameters).excess);
        return excess(near) < 0 ? findRoot(excess, near, c, 1e-8 * unit) : near;
      }
      if (c === limit) return null;
      inside = { c, parameters: outside.parameters };
    }
    return null;
  };
  return { low: end(-1, lowest), high: end(1, highest) };
}

/** Of the quantity by the delta method: the first step outwards. */
function standardError({ value, condition }: CurveQuantity, fit: CurveFit, conditionSd: number): number {
  const h = 1e-5 * (Math.abs(value) || 1);
  const slope = (condition(value + h, fit.parameters) - condition(value - h, fit.parameters)) / (2 * h);
  const size = conditionSd / Math.abs(slope);
  return Number.isFinite(size) && size > 0 ? size : Math.abs(value) / 10 || 1;
}
