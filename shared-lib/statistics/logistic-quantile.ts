import { chiSquareQuantile } from './distributions.ts';
import { findRoot } from './find-root.ts';
import { logistic, logisticLogLikelihood, poolSteps, type EventStep, type LogisticFit } from './logistic-fit.ts';

export interface LogisticQuantile {
  value: number;
  /** `null`: the steps do not bound it on this side. */
  low: number | null;
  high: number | null;
}

/** Searches for an end give up this many ranges of x away: the side is open. */
const FARTHEST = 1e3;
const STEEPEST = 1e6;

/**
 * The x at which a share `q` has the event, by a fitted logistic curve that rises with x, with its profile-likelihood
 * interval: every x for which the best curve through that point falls short of the best of all by no more than the
 * chi-square limit. Curves that fall with x are ruled out.
 * @param fit of the same steps, slope above 0.
 * @throws RangeError for a slope that does not rise, or q outside 0–1.
 * Source: D. A. Williams, Biometrics 42 (1986) 641 (interval of a lethal dose by the likelihood ratio).
 */
export function logisticQuantile(steps: readonly EventStep[], fit: LogisticFit, q: number, level = 0.95): LogisticQuantile {
  if (!(fit.slope > 0)) throw new RangeError('The share does not rise with x, so no x belongs to a share.');
  if (!(q > 0 && q < 1)) throw new RangeError(`A share lies between 0 and 1, not ${q}.`);
  const pooled = poolSteps(steps);
  const range = pooled.at(-1)!.x - pooled[0]!.x;
  const logOdds = Math.log(q / (1 - q));
  const value = (logOdds - fit.intercept) / fit.slope;
  const cutoff = chiSquareQuantile(level, 1);
  const excess = (c: number) => 2 * (fit.logLikelihood - bestThrough(pooled, c, logOdds, range)) - cutoff;
  const end = (direction: 1 | -1): number | null => {
    let inside = value;
    for (let distance = range / 64; distance <= FARTHEST * range; distance *= 2) {
      const outside = value + direction * distance;
      if (excess(outside) > 0) return findRoot(excess, inside, outside, 1e-12 * range);
      inside = outside;
    }
    return null;
  };
  return { value, low: end(-1), high: end(1) };
}

/** Highest log-likelihood of the curves that rise through the point; their slope is the only thing left to choose. */
function bestThrough(steps: readonly EventStep[], c: number, logOdds: number, range: number): number {
  const score = (slope: number) => steps.reduce((sum, { x, tried, events }) => sum + (events - tried * logistic(slope * (x - c) + logOdds)) * (x - c), 0);
  const at = (slope: number) => logisticLogLikelihood(steps, (x) => slope * (x - c) + logOdds);
  if (score(0) <= 0) return at(0);
  let steep = 1 / range;
  while (score(steep) > 0 && steep < STEEPEST / range) steep *= 4;
  return score(steep) > 0 ? at(steep) : at(findRoot(score, 0, steep));
}
