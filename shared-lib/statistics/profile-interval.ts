import { curveResiduals, varianceOf } from './curve-fit.ts';
import type { CurveFit, CurveProblem } from './curve-fit.ts';
import { studentTQuantile } from './distributions.ts';
import { findRoot } from './find-root.ts';
import { minimiseResiduals } from './least-squares.ts';

export interface ProfileInterval {
  /** The quantity at the fitted parameters. */
  value: number;
  /** `null`: the points do not bound the quantity on this side within the range searched, or there is nothing to judge by. */
  low: number | null;
  high: number | null;
}

/**
 * Pull towards the value asked for, in units of the standard error of the quantity. The quantity that results is read
 * back from the fit, so the pull need not be exact.
 */
const PULL = 1e3;
const DOUBLINGS = 40;

/**
 * Interval of a quantity that follows from the parameters of a fitted curve ('hours until the limit is reached'),
 * by the profile of the sum of squares: all values c for which the best curve with that c has
 * (RSS(c) − RSS_min)/s² ≤ t². Keeps its level where the delta method's symmetric interval does not, and shows an open side
 * where one is.
 * @param problem the points and the curve that were fitted.
 * @param fit the result of `fitCurve` for `problem`.
 * @param quantity function of the parameters; not finite where it has no value (the limit is never reached).
 * @param options `level`; `lowest` and `highest` value searched.
 * @throws RangeError when the quantity has no value at the fitted parameters.
 * Source: D. M. Bates, D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988), 6.1.
 */
export function profileInterval(
  problem: CurveProblem,
  fit: CurveFit,
  quantity: (parameters: readonly number[]) => number,
  options: { level?: number; lowest?: number; highest?: number } = {},
): ProfileInterval {
  const { level = 0.95, lowest = -Infinity, highest = Infinity } = options;
  const value = quantity(fit.parameters);
  if (!Number.isFinite(value)) throw new RangeError('The quantity has no value at the fitted curve.');
  const residualSd = fit.residualSd;
  if (residualSd === null) return { value, low: null, high: null };
  if (residualSd === 0) return { value, low: value, high: value };

  const t = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
  const variance = varianceOf(fit, quantity);
  const unit = variance ? Math.sqrt(variance) : Math.abs(value) / 10 || 1;
  const residuals = curveResiduals(problem);

  /** The best curve pulled towards `target`: where the quantity came to lie, and by how much t² is exceeded. */
  const pulled = (target: number, start: readonly number[]) => {
    const found = minimiseResiduals(
      (parameters) => [...Array.from(residuals(parameters), (residual) => residual / residualSd), (PULL * (quantity(parameters) - target)) / unit],
      start,
      { lower: problem.lower, upper: problem.upper },
    );
    const reached = quantity(found.parameters);
    const pull = (PULL * (reached - target)) / unit;
    const excess = found.sumOfSquares - pull * pull - fit.residualSumOfSquares / residualSd ** 2 - t * t;
    return { parameters: found.parameters, reached, excess };
  };

  const end = (direction: 1 | -1, limit: number): number | null => {
    let inside = { target: value, parameters: fit.parameters };
    for (let step = 0; step < DOUBLINGS; step++) {
      const wanted = value + direction * unit * 2 ** (step - 1);
      const target = direction > 0 ? Math.min(wanted, limit) : Math.max(wanted, limit);
      const outside = pulled(target, inside.parameters);
      if (outside.excess > 0) {
        const start = inside;
        const root = findRoot((c) => (c === start.target ? -t * t : pulled(c, start.parameters).excess), start.target, target, 1e-9 * unit);
        return pulled(root, start.parameters).reached;
      }
      if (target === limit) return null;
      inside = { target, parameters: outside.parameters };
    }
    return null;
  };
  return { value, low: end(-1, lowest), high: end(1, highest) };
}
