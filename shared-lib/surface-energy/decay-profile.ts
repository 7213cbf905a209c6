import { studentTQuantile } from '../statistics/distributions.ts';
import { findRoot } from '../statistics/find-root.ts';
import type { DecayModel } from './decay-models.ts';
import { decayAt, fitDecayAtRate, fitDecayOfSize, fitDecayThrough, type DecayFit, type DecayReading } from './decay-fit.ts';

/** A fitted decay with what its profile intervals need. */
export interface Decay {
  model: DecayModel;
  readings: readonly DecayReading[];
  fit: DecayFit;
  /** Drop of the log-likelihood allowed within an interval. */
  cutoff: number;
}

/** Ends of an interval; `null` where it reaches as far as was searched. */
export interface Ends {
  low: number | null;
  high: number | null;
}

/** Days beyond which nobody keeps film: searches stop at ten years. */
export const farthestDays = 3650;

/**
 * Drop of the log-likelihood that makes the profile interval the exact t interval when all readings are exact and the curve is
 * straight in its parameters: n/2 · ln(1 + t²/ν), ν = n − parameters.
 */
export function decayCutoff(n: number, parameters: number, level: number): number {
  const df = n - parameters;
  const t = studentTQuantile((1 + level) / 2, df);
  return (n / 2) * Math.log1p((t * t) / df);
}

/** Profile interval of the curve's tension, mN/m, at `days`; Infinity gives the floor. */
export function tensionInterval(decay: Decay, days: number): Ends {
  const { model, readings, fit } = decay;
  const value = days === Infinity ? fit.base : decayAt(model, fit, days);
  return interval(decay, value, 0.5, 0.002, 100, (tension) => fitDecayThrough(model, readings, days, tension).logLikelihood);
}

/** Profile interval of the rate of the curve's shape, per day. */
export function rateInterval(decay: Decay): Ends {
  const { model, readings, fit } = decay;
  const range = model.rates(readings.map((reading) => reading.days))!;
  const ends = interval(decay, Math.log(fit.rate), 0.25, 1e-4, 20, (log) =>
    Math.log(range.low) <= log && log <= Math.log(range.high) ? fitDecayAtRate(model, readings, Math.exp(log)).logLikelihood : NaN,
  );
  return { low: ends.low === null ? null : Math.exp(ends.low), high: ends.high === null ? null : Math.exp(ends.high) };
}

/** Profile interval of the size of the curve, mN/m. */
export function sizeInterval(decay: Decay): Ends {
  const { model, readings, fit } = decay;
  return interval(decay, fit.size, 0.5, 0.002, 1000, (size) => fitDecayOfSize(model, readings, size).logLikelihood);
}

/** Days at which the fitted curve comes down to `requiredMNm`, or why it has none. */
export function daysUntil({ model, fit }: Decay, requiredMNm: number): number | 'from the start' | 'never' {
  if (decayAt(model, fit, 0) <= requiredMNm) return 'from the start';
  const tensionAt = (log: number) => decayAt(model, fit, Math.expm1(log)) - requiredMNm;
  const last = Math.log1p(farthestDays);
  return tensionAt(last) > 0 ? 'never' : Math.expm1(findRoot(tensionAt, 0, last, 1e-12));
}

/**
 * Profile interval of the days until the curve comes down to `requiredMNm`: all days on which some curve near enough to the
 * likeliest one has that tension. `low` 0: perhaps from the start; `high` `null`: perhaps not within ten years.
 */
export function daysInterval(decay: Decay, requiredMNm: number): Ends {
  const { model, readings, fit, cutoff } = decay;
  const excess = (log: number) =>
    fit.logLikelihood - fitDecayThrough(model, readings, Math.expm1(log), requiredMNm).logLikelihood - cutoff;
  const last = Math.log1p(farthestDays);
  const days = daysUntil(decay, requiredMNm);
  const from = days === 'from the start' ? 0 : days === 'never' ? last : Math.log1p(days);
  const low = excess(0) <= 0 ? 0 : crossing(excess, 0, from, last);
  const high = excess(last) <= 0 ? null : crossing(excess, last, from, last);
  return {
    low: low === null ? null : Math.expm1(low),
    high: high === null ? null : Math.expm1(high),
  };
}

/** Where `excess` first comes below 0 on the way from `outside` to `inside`, in steps of a sixteenth of the whole way. */
function crossing(excess: (log: number) => number, outside: number, inside: number, whole: number): number | null {
  const step = (Math.sign(inside - outside) * whole) / 16;
  for (let at = outside; (inside - at) * step > 0; ) {
    const next = Math.abs(inside - at) < Math.abs(step) ? inside : at + step;
    if (excess(next) <= 0) return findRoot(excess, at, next, 1e-5);
    at = next;
  }
  return null;
}

/** Steps outwards from `value`, doubling, until the log-likelihood has dropped by the cutoff; NaN counts as no end. */
function interval(
  { fit, cutoff }: Decay,
  value: number,
  firstStep: number,
  tolerance: number,
  farthest: number,
  logLikelihood: (at: number) => number,
): Ends {
  const excess = (at: number) => fit.logLikelihood - logLikelihood(at) - cutoff;
  const end = (direction: 1 | -1): number | null => {
    let inside = value;
    for (let distance = firstStep; distance <= farthest; distance *= 2) {
      const at = value + direction * distance;
      const over = excess(at);
      if (Number.isNaN(over)) return null;
      if (over > 0) return findRoot((x) => (x === value ? -cutoff : excess(x)), inside, at, tolerance);
      inside = at;
    }
    return null;
  };
  return { low: end(-1), high: end(1) };
}
