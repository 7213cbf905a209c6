import { fitCensoredNormal } from './censored-normal.ts';
import type { Censored, CensoredNormalFit } from './censored-normal.ts';
import { NormalLikelihood } from './normal-likelihood.ts';

/** The mean of one group of readings, some only bounds, and how well every other mean would explain them. */
export interface CensoredMean {
  n: number;
  mean: number;
  /** Maximum likelihood (divisor n), above 0. */
  standardDeviation: number;
  /** Log-likelihood of a mean with its spread at its best, less that of the estimate: 0 there, below it elsewhere; and its slope. */
  profile: (mean: number) => { value: number; slope: number };
}

/** Distance of the points kept, in asinh of standard deviations: interpolated between, the profile is good to 1e-8. */
const STEP = 1 / 32;
/** Place of the estimate among the points kept: beyond asinh⁻¹ of 32 on either side nothing is ever asked. */
const MIDDLE = 1024;

/**
 * Prepares a group for comparisons with others: its profile is worked out once, at points that are then shared.
 * @param fit of the same readings, where the caller has it.
 * @returns `null` where the readings do not let mean and spread be estimated (all torn, all in one bracket, one reading).
 * @throws RangeError as `fitCensoredNormal`.
 */
export function censoredMean(readings: readonly Censored[], fit: CensoredNormalFit = fitCensoredNormal(readings)): CensoredMean | null {
  const { status, mean, standardDeviation, n } = fit;
  if (status !== 'estimated' || mean === null || !standardDeviation || n < 2) return null;
  const likelihood = new NormalLikelihood(readings.map(({ low, high }) => ({
    low: low === null ? -Infinity : (low - mean) / standardDeviation,
    high: high === null ? Infinity : (high - mean) / standardDeviation,
  })));
  const at = interpolated(likelihood);
  const top = at(0).value;
  return {
    n,
    mean,
    standardDeviation,
    profile: (other) => {
      const { value, slope } = at((other - mean) / standardDeviation);
      return { value: value - top, slope: slope / standardDeviation };
    },
  };
}

/** The profile, smooth and straight far out in asinh of its argument: cubics through value and slope at points kept. */
function interpolated(likelihood: NormalLikelihood): (at: number) => { value: number; slope: number } {
  const points: { value: number; slope: number; precision: number }[] = [];
  const point = (place: number) => {
    const known = points[MIDDLE + place];
    if (known) return known;
    const s = place * STEP;
    // The neighbour's precision is nearly this one's.
    const start = points[MIDDLE + place - Math.sign(place)]?.precision ?? 1 / Math.cosh(s);
    const { value, byMean, precision } = likelihood.atMean(Math.sinh(s), start);
    const found = { value, slope: byMean * Math.cosh(s) * STEP, precision };
    points[MIDDLE + place] = found;
    return found;
  };
  return (at) => {
    const s = Math.asinh(at) / STEP;
    const place = Math.floor(s);
    const [left, right] = [point(place), point(place + 1)];
    const t = s - place;
    const rise = right.value - left.value;
    const [bend, counterBend] = [left.slope - rise, rise - right.slope];
    return {
      value: left.value + t * rise + t * (1 - t) * ((1 - t) * bend + t * counterBend),
      slope: (rise + (1 - t) * (1 - 3 * t) * bend + t * (2 - 3 * t) * counterBend) / (STEP * Math.hypot(1, at)),
    };
  };
}
