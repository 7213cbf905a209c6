import type { CensoredMean } from './censored-mean.ts';
import { studentTQuantile, studentTUpperTail } from './distributions.ts';
import { findRoot } from './find-root.ts';
import { welchDegreesOfFreedom } from './pair-comparison.ts';

export interface CensoredDifference {
  /** Mean of a minus mean of b. */
  difference: number;
  /** Ends of the interval at a level; `null`: open on that side. */
  interval: (level: number) => { low: number | null; high: number | null };
  /** Two-sided p of a true difference of `supposed`. */
  p: (supposed: number) => number;
}

/** Ends of the interval are not looked for farther out, in spreads. */
const FARTHEST = 1e4;

/**
 * Difference of two means where some readings are only bounds, each group with a spread of its own: profile likelihood.
 * The cut-off is the one that gives Welch's interval when every reading is exact, so that few readings keep their level.
 * Ends are good to 1e-6 of the difference's standard error.
 * Source: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapter 8; B. L. Welch,
 * Biometrika 34 (1947) 28.
 */
export function censoredDifference(a: CensoredMean, b: CensoredMean): CensoredDifference {
  const unit = Math.max(a.standardDeviation, b.standardDeviation);
  const exact = new ExactDeviance(a.n, (a.standardDeviation / unit) ** 2, b.n, (b.standardDeviation / unit) ** 2);
  /** Shift δ of the difference from its estimate, in units: half the drop is taken up by each mean as suits it best. */
  const deviance = (shift: number) =>
    lowest((part) => {
      const [first, second] = [a.profile(a.mean + unit * part), b.profile(b.mean + unit * (part - shift))];
      return { value: -2 * (first.value + second.value), slope: -2 * unit * (first.slope + second.slope) };
    }, shift);
  const difference = a.mean - b.mean;
  const end = (direction: 1 | -1, cutoff: number): number | null => {
    for (let distance = exact.error; distance < FARTHEST; distance *= 2) {
      if (deviance(direction * distance) < cutoff) continue;
      return difference + unit * findRoot((shift) => deviance(shift) - cutoff, direction * distance, distance > exact.error ? (direction * distance) / 2 : 0, 1e-7 * exact.error);
    }
    return null;
  };
  return {
    difference,
    interval: (level) => {
      const cutoff = exact.at(exact.reach(level));
      return { low: end(-1, cutoff), high: end(1, cutoff) };
    },
    p: (supposed) => exact.p(deviance((supposed - difference) / unit)),
  };
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
    return lowest((part) => {
      const rest = distance - part;
      return {
        value: this.countA * Math.log1p((part * part) / this.varianceA) + this.countB * Math.log1p((rest * rest) / this.varianceB),
        slope: (2 * this.countA * part) / (this.varianceA + part * part) - (2 * this.countB * rest) / (this.varianceB + rest * rest),
      };
    }, distance);
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
    return 2 * studentTUpperTail(findRoot((distance) => this.at(distance) - deviance, 0, far, 1e-10 * this.error) / this.error, this.df);
  }
}

const STEPS = 8;
/** Of the place, as a share of the stretch: the value is flat there and ten thousand times closer. */
const PLACE = 1e-6;

/** Lowest value of f between 0 and `to`: a coarse look, then the place about the lowest point seen where the slope is zero. */
function lowest(f: (x: number) => { value: number; slope: number }, to: number): number {
  if (to === 0) return f(0).value;
  const seen = Array.from({ length: STEPS + 1 }, (_, step) => f((to * step) / STEPS));
  const best = seen.reduce((least, { value }, step) => (value < seen[least]!.value ? step : least), 0);
  const [before, after] = [Math.max(0, best - 1), Math.min(STEPS, best + 1)];
  if (!(seen[before]!.slope * to < 0 && seen[after]!.slope * to > 0)) return seen[best]!.value;
  const place = findRoot((x) => f(x).slope, (to * before) / STEPS, (to * after) / STEPS, PLACE * Math.abs(to));
  return Math.min(f(place).value, seen[best]!.value);
}
