import { fitCensoredNormal } from './censored-normal.ts';
import type { Censored } from './censored-normal.ts';
import { studentTQuantile, studentTUpperTail } from './distributions.ts';
import { findRoot } from './find-root.ts';
import { NormalLikelihood } from './normal-likelihood.ts';
import { welchDegreesOfFreedom } from './pair-comparison.ts';

export interface CensoredDifference {
  /** Mean of a minus mean of b. */
  difference: number;
  low: number | null;
  high: number | null;
  p: number;
}

/** Ends of the interval are not looked for farther out, in spreads. */
const FARTHEST = 1e4;

/**
 * Difference of two means where some readings are only bounds, each group with a spread of its own: profile likelihood.
 * The cut-off is the one that gives Welch's interval when every reading is exact, so that few readings keep their level.
 * @returns `null` where a group does not let its mean and spread be estimated (all torn, all in one bracket).
 * @throws RangeError as `fitCensoredNormal`.
 * Source: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapter 8; B. L. Welch,
 * Biometrika 34 (1947) 28.
 */
export function compareCensored(a: readonly Censored[], b: readonly Censored[], level = 0.95): CensoredDifference | null {
  const [first, second] = [fitCensoredNormal(a), fitCensoredNormal(b)];
  if (first.status !== 'estimated' || second.status !== 'estimated') return null;
  if (!first.standardDeviation || !second.standardDeviation || a.length < 2 || b.length < 2) return null;
  const unit = Math.max(first.standardDeviation, second.standardDeviation);
  const profileA = profileOf(a, first.mean!, unit);
  const profileB = profileOf(b, second.mean!, unit);
  const exact = new ExactDeviance(a.length, (first.standardDeviation / unit) ** 2, b.length, (second.standardDeviation / unit) ** 2);
  const peak = profileA(0) + profileB(0);
  /** Shift δ of the difference from its estimate, in units: half the drop is taken up by each mean as suits it best. */
  const deviance = (shift: number) => 2 * (peak + lowest((part) => -profileA(part) - profileB(part - shift), shift));
  const difference = first.mean! - second.mean!;
  const cutoff = exact.at(exact.reach(level));
  const end = (direction: 1 | -1): number | null => {
    for (let distance = exact.error; distance < FARTHEST; distance *= 2) {
      if (deviance(direction * distance) < cutoff) continue;
      return difference + unit * findRoot((shift) => deviance(shift) - cutoff, direction * distance, 0, 1e-7 * exact.error);
    }
    return null;
  };
  return { difference, low: end(-1), high: end(1), p: exact.p(deviance(-difference / unit)) };
}

/** Log-likelihood of a group's mean, its spread at its best; `at` counted from the estimate in units. */
function profileOf(readings: readonly Censored[], origin: number, unit: number): (at: number) => number {
  const likelihood = new NormalLikelihood(readings.map(({ low, high }) => ({
    low: low === null ? -Infinity : (low - origin) / unit,
    high: high === null ? Infinity : (high - origin) / unit,
  })));
  return (at) => likelihood.atMean(at, 1).value;
}

/** The same deviance when every reading is exact, where Welch's t is known. */
class ExactDeviance {
  readonly error: number;
  private readonly df: number;

  /** Spreads as maximum likelihood gives them (divisor n). */
  constructor(
    private readonly countA: number,
    private readonly varianceA: number,
    private readonly countB: number,
    private readonly varianceB: number,
  ) {
    const [u, v] = [varianceA / (countA - 1), varianceB / (countB - 1)];
    this.error = Math.sqrt(u + v);
    this.df = welchDegreesOfFreedom(u, countA - 1, v, countB - 1);
  }

  at(distance: number): number {
    return lowest((part) => this.countA * Math.log1p((part * part) / this.varianceA) + this.countB * Math.log1p((distance - part) ** 2 / this.varianceB), distance);
  }

  /** Half the width of Welch's interval. */
  reach(level: number): number {
    return studentTQuantile((1 + level) / 2, this.df) * this.error;
  }

  /** Two-sided p of the distance that has this deviance. */
  p(deviance: number): number {
    if (!(deviance > 1e-12)) return 1;
    let far = this.error;
    while (this.at(far) < deviance && far < 1e12) far *= 2;
    if (far >= 1e12) return 0;
    return 2 * studentTUpperTail(findRoot((distance) => this.at(distance) - deviance, 0, far, 1e-12) / this.error, this.df);
  }
}

const STEPS = 8;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Lowest value of f between 0 and `to`: a coarse look, then golden sections about the lowest point seen. */
function lowest(f: (x: number) => number, to: number): number {
  if (to === 0) return f(0);
  const values = Array.from({ length: STEPS + 1 }, (_, i) => f((to * i) / STEPS));
  const best = values.indexOf(Math.min(...values));
  let low = (to * Math.max(0, best - 1)) / STEPS;
  let high = (to * Math.min(STEPS, best + 1)) / STEPS;
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [fLeft, fRight] = [f(left), f(right)];
  for (let round = 0; round < 40; round++) {
    if (fLeft < fRight) {
      [high, right, fRight] = [right, left, fLeft];
      left = high - GOLDEN * (high - low);
      fLeft = f(left);
    } else {
      [low, left, fLeft] = [left, right, fRight];
      right = low + GOLDEN * (high - low);
      fRight = f(right);
    }
  }
  return Math.min(fLeft, fRight, values[best]!);
}
