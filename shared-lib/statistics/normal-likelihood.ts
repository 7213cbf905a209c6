import { normalLogDensity, normalUpperTail } from './distributions.ts';

/** A reading known exactly (`low === high`), in a bracket, or on one side only (the open end is infinite). */
export interface Bracket {
  low: number;
  high: number;
}

/** Log-likelihood of readings under a normal distribution and its slopes. */
interface Terms {
  value: number;
  /** With respect to the precision h = 1/σ, and again. */
  byPrecision: number;
  byPrecisionTwice: number;
  /** With respect to the mean. */
  byMean: number;
  byMeanTwice: number;
}

/** Likelihood with the other parameter at its best. */
export interface Profile {
  value: number;
  mean: number;
  precision: number;
  /** Slope along the mean. */
  byMean: number;
}

/** A bracket of fewer standard deviations counts as its middle: its slopes would be differences of equal numbers. */
const NARROW = 1e-5;

/** Precisions beyond these are taken for no spread at all, and for spread without bound. */
export const PRECISION_RANGE = { low: 1e-7, high: 1e7 };

/**
 * Log-likelihood of bracketed readings under a normal distribution, readings scaled to order one.
 * In precision h and h·mean it is concave, so each profile has one peak (J. Burridge, J. R. Stat. Soc. B 43 (1981) 41;
 * R. J. Olsen, Econometrica 46 (1978) 1211).
 */
export class NormalLikelihood {
  /** Equal readings, counted once each: films read in steps hold few different brackets. */
  private readonly groups: { low: number; high: number; count: number }[];

  constructor(readings: readonly Bracket[]) {
    const groups = new Map<string, { low: number; high: number; count: number }>();
    for (const { low, high } of readings) {
      const key = `${low} ${high}`;
      const group = groups.get(key);
      if (group) group.count++;
      else groups.set(key, { low, high, count: 1 });
    }
    this.groups = [...groups.values()];
  }

  terms(mean: number, precision: number): Terms {
    const sum: Terms = { value: 0, byPrecision: 0, byPrecisionTwice: 0, byMean: 0, byMeanTwice: 0 };
    for (const { low, high, count } of this.groups) {
      const a = low - mean;
      const b = high - mean;
      const za = precision * a;
      const zb = precision * b;
      const width = precision * (high - low);
      if (width * Math.max(1, Math.abs(za)) < NARROW) {
        const middle = (a + b) / 2;
        // An exact reading has a density instead of a probability.
        sum.value += count * (Math.log(low === high ? precision : width) + normalLogDensity(precision * middle));
        sum.byPrecision += count * (1 / precision - precision * middle * middle);
        sum.byPrecisionTwice -= count * (1 / (precision * precision) + middle * middle);
        sum.byMean += count * precision * precision * middle;
        sum.byMeanTwice -= count * precision * precision;
        continue;
      }
      const logP = logProbability(za, zb);
      const ua = Number.isFinite(za) ? Math.exp(normalLogDensity(za) - logP) : 0;
      const ub = Number.isFinite(zb) ? Math.exp(normalLogDensity(zb) - logP) : 0;
      const fa = ua === 0 ? 0 : a;
      const fb = ub === 0 ? 0 : b;
      const slope = ub * fb - ua * fa;
      const shift = precision * (ua - ub);
      sum.value += count * logP;
      sum.byPrecision += count * slope;
      sum.byPrecisionTwice += count * (precision * (ua * fa ** 3 - ub * fb ** 3) - slope * slope);
      sum.byMean += count * shift;
      sum.byMeanTwice += count * (precision ** 3 * (ua * fa - ub * fb) - shift * shift);
    }
    return sum;
  }

  /** The best precision for a given mean. */
  atMean(mean: number, start = 1): Profile {
    const precision = peak(start, PRECISION_RANGE.low, PRECISION_RANGE.high, (h) => {
      const { byPrecision, byPrecisionTwice } = this.terms(mean, h);
      return { slope: byPrecision, curvature: byPrecisionTwice };
    });
    const { value, byMean } = this.terms(mean, precision);
    return { value, mean, precision, byMean };
  }

  /** The best mean for a given precision. */
  atPrecision(precision: number, start: number): Profile {
    // Seen from far outside the readings, mean + FAR is a positive quantity that `peak` can bracket.
    const FAR = 1e4;
    const mean = peak(start + FAR, 1, 2 * FAR, (shifted) => {
      const { byMean, byMeanTwice } = this.terms(shifted - FAR, precision);
      return { slope: byMean, curvature: byMeanTwice };
    }) - FAR;
    const { value, byMean } = this.terms(mean, precision);
    return { value, mean, precision, byMean };
  }
}

/**
 * Peak of a concave function on [low, high], 0 < low: Newton steps held inside a bracket that shrinks by its slope's
 * sign. The end of the range is the answer where the function still rises there.
 */
function peak(start: number, low: number, high: number, f: (x: number) => { slope: number; curvature: number }): number {
  let below = low;
  let above = high;
  let x = start;
  let lastStep = Infinity;
  for (let count = 0; count < 200; count++) {
    const { slope, curvature } = f(x);
    if (slope > 0) below = x;
    else if (slope < 0) above = x;
    else return x;
    if (above / below < 1 + 1e-14) return x;
    let next = curvature < 0 ? x - slope / curvature : slope > 0 ? above : below;
    if (Math.abs(next - x) <= 1e-14 * x) return next;
    // A step of more than a factor of ten is a guess from a flat region: take that much of it.
    next = Math.min(Math.max(next, x / 10), x * 10);
    if (!(next > below && next < above)) {
      if (slope > 0 && above === high && next >= high) return high;
      if (slope < 0 && below === low && next <= low) return low;
      next = Math.sqrt(below * above);
    } else if (Math.abs(next - x) > Math.abs(lastStep) / 2) {
      // Steps that do not shrink rest on a curvature that is all rounding, as far out in a tail: halve the bracket.
      next = Math.sqrt(below * above);
    }
    lastStep = next - x;
    x = next;
  }
  return x;
}

/** ln P(a < Z ≤ b) of the standard normal, accurate in both tails and for narrow brackets. */
export function logProbability(a: number, b: number): number {
  if (a + b < 0) return logProbability(-b, -a);
  const width = b - a;
  const middle = (a + b) / 2;
  if (width * Math.max(1, middle) < 1e-3) {
    const square = width * width;
    return normalLogDensity(middle) + Math.log(width) + (square * (middle * middle - 1)) / 24;
  }
  if (b === Infinity) return logUpperTail(a);
  const upper = logUpperTail(a);
  return upper + Math.log1p(-Math.exp(logUpperTail(b) - upper));
}

function logUpperTail(z: number): number {
  if (z === -Infinity) return 0;
  if (z < 30) return Math.log(normalUpperTail(z));
  const inverse = 1 / (z * z);
  return normalLogDensity(z) - Math.log(z) + Math.log1p(-inverse * (1 - 3 * inverse * (1 - 5 * inverse)));
}
