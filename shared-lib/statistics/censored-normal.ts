import { chiSquareQuantile, studentTQuantile } from './distributions.ts';
import { findRoot } from './find-root.ts';
import { NormalLikelihood, PRECISION_RANGE } from './normal-likelihood.ts';
import type { Bracket, Profile } from './normal-likelihood.ts';
import { meanOf, summarise } from './summarise.ts';

/** A reading known only within limits: `low === high` exact, `null` open on that side. */
export interface Censored {
  low: number | null;
  high: number | null;
}

export interface CensoredNormalFit {
  /**
   * `estimated`: mean and spread by maximum likelihood.
   * `between`: no spread can be estimated; the mean is only known to lie from `low` to `high` (an open side is `null`).
   * `at-least` / `at-most`: every reading is open on that side; `low` / `high` is the bound of the mean of these readings.
   */
  status: 'estimated' | 'between' | 'at-least' | 'at-most';
  n: number;
  mean: number | null;
  /** Maximum likelihood (divisor n); 0 where the brackets are too coarse to show any. */
  standardDeviation: number | null;
  logLikelihood: number | null;
  /** Interval of the mean (`estimated`) or the limits themselves. */
  low: number | null;
  high: number | null;
  sdLow: number | null;
  sdHigh: number | null;
  /** One sentence: how the answer came about, or why there is no better one. */
  reason: string;
}

/** Searches for an end of the interval give up this many hull widths away: the side is open. */
const FARTHEST = 1e6;

/**
 * Mean and spread of a normal population from exact, bracketed and one-sided readings, by maximum likelihood.
 *
 * The interval of the mean is the profile-likelihood interval. Its cut-off is not chi-square's, which is too short for
 * a handful of readings, but the one that makes it the exact t interval when every reading is exact:
 * 2·(l_max − l(μ)) ≤ n·ln(1 + t²/(n − 1)), t with n − 1 degrees of freedom. Limits of the spread use the cut-offs that
 * likewise reproduce the chi-square interval. `tests/slow/coverage.test.ts` measures the coverage: 94 to 96 % from five
 * readings on, more where the brackets are so coarse that a sample falls into one or two of them.
 *
 * Where all brackets share a common part the likelihood has no peak (every mean in it explains the readings without
 * any spread): `between`, the profile interval cut to the outermost ends of the brackets, which for equal brackets
 * is the bracket itself; widening a bracket can then only widen the answer. (An estimate has no such rule: a bracket wide
 * enough to hide an odd reading hides the spread as well.) Fewer than three readings of which any is censored: the outermost ends.
 * @throws RangeError without readings, for a limit that is not finite, for low > high or for a reading open on both sides.
 * Source: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapters 7 and 8.
 */
export function fitCensoredNormal(observations: readonly Censored[], level = 0.95): CensoredNormalFit {
  const readings = observations.map(toBracket);
  const n = readings.length;
  if (n === 0) throw new RangeError('An estimate needs at least one reading.');
  if (readings.every(isExact)) return fromExact(readings.map(({ low }) => low), level);

  const hull = { low: Math.min(...readings.map(({ low }) => low)), high: Math.max(...readings.map(({ high }) => high)) };
  if (readings.every(({ high }) => high === Infinity)) {
    return limits('at-least', n, meanOf(readings.map(({ low }) => low)), Infinity, 'Every reading is only known to be at least its value, so the mean of these readings is at least the mean of the values.');
  }
  if (readings.every(({ low }) => low === -Infinity)) {
    return limits('at-most', n, -Infinity, meanOf(readings.map(({ high }) => high)), 'Every reading is only known to be at most its value, so the mean of these readings is at most the mean of the values.');
  }
  if (n < 3) {
    return limits('between', n, hull.low, hull.high, 'Fewer than three readings, not all of them exact, show no spread: the mean is only known to lie within their limits.');
  }
  return fromLikelihood(readings, hull, level);
}

function toBracket({ low, high }: Censored): Bracket {
  if (low === null && high === null) throw new RangeError('A reading open on both sides says nothing; give a lower or an upper limit.');
  const culprit = [low, high].find((end) => end !== null && !Number.isFinite(end));
  if (culprit !== undefined) throw new RangeError(`A limit must be a finite number or null, not ${culprit}.`);
  if (low !== null && high !== null && low > high) throw new RangeError(`The lower limit ${low} lies above the upper limit ${high}.`);
  return { low: low ?? -Infinity, high: high ?? Infinity };
}

function isExact({ low, high }: Bracket): boolean {
  return low === high;
}

function limits(status: 'between' | 'at-least' | 'at-most', n: number, low: number, high: number, reason: string): CensoredNormalFit {
  const finite = (end: number) => (Number.isFinite(end) ? end : null);
  return { status, n, mean: null, standardDeviation: null, logLikelihood: null, low: finite(low), high: finite(high), sdLow: null, sdHigh: null, reason };
}

/** Closed form: the t interval, which the profile interval equals here. */
function fromExact(values: number[], level: number): CensoredNormalFit {
  const { n, mean, low, high, standardDeviation } = summarise(values, level);
  const fit: CensoredNormalFit = { status: 'estimated', n, mean, standardDeviation: null, logLikelihood: null, low, high, sdLow: null, sdHigh: null, reason: 'One exact reading shows no spread, so there is no interval.' };
  if (standardDeviation === null) return fit;
  const squares = standardDeviation ** 2 * (n - 1);
  const variance = squares / n;
  const sdAt = (p: number) => Math.sqrt(squares / chiSquareQuantile(p, n - 1));
  return {
    ...fit,
    standardDeviation: Math.sqrt(variance),
    logLikelihood: variance > 0 ? (-n / 2) * (Math.log(2 * Math.PI * variance) + 1) : null,
    sdLow: sdAt((1 + level) / 2),
    sdHigh: sdAt((1 - level) / 2),
    reason: variance > 0 ? 'Every reading is exact: mean and t interval.' : 'All readings are equal: there is no spread to give an interval width.',
  };
}

function fromLikelihood(readings: Bracket[], hull: Bracket, level: number): CensoredNormalFit {
  const n = readings.length;
  const ends = readings.flatMap(({ low, high }) => [low, high]).filter(Number.isFinite);
  const origin = Math.min(...ends);
  const scale = Math.max(...ends) - origin || Math.max(Math.abs(origin), 1);
  const likelihood = new NormalLikelihood(readings.map(({ low, high }) => ({ low: (low - origin) / scale, high: (high - origin) / scale })));
  const back = (scaled: number) => snap(origin + scaled * scale, ends, 1e-6 * scale);
  const common = { low: Math.max(...readings.map(({ low }) => low)), high: Math.min(...readings.map(({ high }) => high)) };
  const cutoff = meanCutoff(n, level);

  if (common.low <= common.high && readings.some(isExact)) {
    return limits('between', n, hull.low, hull.high, 'One value fits every reading, so they show no spread: the mean is only known to lie within their limits.');
  }
  if (common.low < common.high) {
    const top = likelihood.atMean(((common.low + common.high) / 2 - origin) / scale, PRECISION_RANGE.high);
    const low = Math.max(back(intervalEnd(likelihood, top, 0, cutoff, -1)), hull.low);
    const high = Math.min(back(intervalEnd(likelihood, top, 0, cutoff, 1)), hull.high);
    return limits('between', n, low, high, 'The limits of all readings share a common part, so they show no spread: the mean is only known to lie between the limits given.');
  }

  const best = likelihoodPeak(likelihood);
  if (best === null) {
    return limits('between', n, -Infinity, Infinity, 'These readings contradict each other or bound too little, so neither mean nor spread can be estimated.');
  }
  const spreadless = common.low === common.high;
  const finite = (end: number) => (Number.isFinite(end) ? end : null);
  const exactCount = readings.filter(isExact).length;
  const sdEnd = (p: number, direction: 1 | -1) => scale / precisionEnd(likelihood, best, spreadCutoff(n, p), direction);
  return {
    status: 'estimated',
    n,
    mean: spreadless ? common.low : back(best.mean),
    standardDeviation: spreadless ? 0 : scale / best.precision,
    logLikelihood: best.value - exactCount * Math.log(scale),
    low: finite(back(intervalEnd(likelihood, best, best.value, cutoff, -1))),
    high: finite(back(intervalEnd(likelihood, best, best.value, cutoff, 1))),
    sdLow: spreadless ? 0 : finite(sdEnd((1 + level) / 2, 1)),
    sdHigh: finite(sdEnd((1 - level) / 2, -1)),
    reason: spreadless
      ? 'Maximum likelihood for readings within limits; the limits are too coarse to show any spread.'
      : 'Maximum likelihood for readings within limits, with a profile-likelihood interval.',
  };
}

/** Peak of the likelihood; `null` when it lies at a spread without bound. Scaled readings lie in [0, 1]. */
function likelihoodPeak(likelihood: NormalLikelihood): Profile | null {
  let precision = 2;
  const slope = (mean: number) => {
    const profile = likelihood.atMean(mean, precision);
    precision = profile.precision;
    return profile.byMean;
  };
  const low = stepOut(0, -1, (mean) => slope(mean) > 0);
  const high = stepOut(1, 1, (mean) => slope(mean) < 0);
  if (low === null || high === null) return null;
  const peak = likelihood.atMean(findRoot(slope, low, high, 1e-14), precision);
  return peak.precision > PRECISION_RANGE.low * 10 ? peak : null;
}

/** Where the profile along the mean has dropped by the cut-off, or ±Infinity when it never does. */
function intervalEnd(likelihood: NormalLikelihood, top: Profile, highest: number, cutoff: number, direction: 1 | -1): number {
  let precision = Math.min(top.precision, 1e3);
  const excess = (mean: number) => {
    const profile = likelihood.atMean(mean, precision);
    precision = profile.precision;
    return 2 * (highest - profile.value) - cutoff;
  };
  const outside = stepOut(top.mean, direction, (mean) => excess(mean) > 0);
  return outside === null ? direction * Infinity : findRoot(excess, top.mean, outside, 1e-12);
}

/** Precision at which the profile along it has dropped by the cut-off: upwards for the lower limit of the spread. */
function precisionEnd(likelihood: NormalLikelihood, top: Profile, cutoff: number, direction: 1 | -1): number {
  let mean = top.mean;
  const excess = (logPrecision: number) => {
    const profile = likelihood.atPrecision(Math.exp(logPrecision), mean);
    mean = profile.mean;
    return 2 * (top.value - profile.value) - cutoff;
  };
  const start = Math.log(top.precision);
  const reach = Math.log(PRECISION_RANGE.high);
  for (let distance = 0.5; distance < 2 * reach; distance *= 2) {
    const outside = start + direction * distance;
    if (outside > reach) return Infinity;
    if (outside < -reach) return 0;
    if (excess(outside) > 0) return Math.exp(findRoot(excess, start, outside, 1e-12));
  }
  return direction > 0 ? Infinity : 0;
}

/** The first point, in doubling steps from `start`, at which `beyond` holds; `null` if none is near enough. */
function stepOut(start: number, direction: 1 | -1, beyond: (x: number) => boolean): number | null {
  for (let distance = 0.25; distance <= FARTHEST; distance *= 2) {
    const x = start + direction * distance;
    if (beyond(x)) return x;
  }
  return null;
}

function meanCutoff(n: number, level: number): number {
  const t = studentTQuantile((1 + level) / 2, n - 1);
  return n * Math.log1p((t * t) / (n - 1));
}

/** Drop of the profile along the spread at the chi-square limit for the lower tail probability p. */
function spreadCutoff(n: number, p: number): number {
  const quantile = chiSquareQuantile(p, n - 1);
  return n * Math.log(n / quantile) + quantile - n;
}

/** The end of a bracket, where a search came to rest beside it. */
function snap(value: number, ends: readonly number[], tolerance: number): number {
  return ends.find((end) => Math.abs(end - value) <= tolerance) ?? value;
}
