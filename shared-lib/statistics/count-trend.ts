import { chiSquareQuantile, chiSquareUpperTail } from './distributions.ts';
import { findRoot } from './find-root.ts';
import type { Counted } from './rate-ratio.ts';

export interface CountAt extends Counted {
  x: number;
}

export interface CountTrend {
  /** Change of ln(rate) per unit of x; ±Infinity where every count was made at the largest or smallest x. */
  slope: number;
  /** Profile-likelihood interval of the slope; an open side is ±Infinity. */
  low: number;
  high: number;
  /** Rate of the fitted curve at x; `null` where the slope is not finite. */
  rateAt: ((x: number) => number) | null;
  /** p of Pearson's goodness of fit: small where the counts scatter more than counts do by chance; `null` without degrees of freedom. */
  fitP: number | null;
  /** Factor by which the variance exceeds that of a count, at least 1; the interval allows for it. */
  dispersion: number;
}

/**
 * Log-linear trend of counts: rate = exp(a + slope·x), by maximum likelihood. The intercept is profiled out, so that what
 * is left is a concave function of the slope alone. Where the counts scatter more than a Poisson count does (Pearson's
 * X² over its degrees of freedom above 1), the cut-off of the profile grows by that factor.
 * @returns `null` where nothing was counted or all x are alike: there is no trend to speak of.
 * Source: P. McCullagh, J. A. Nelder, Generalized Linear Models (1989), chapter 6; A. Agresti, An Introduction to Categorical
 * Data Analysis (2007), chapter 3.
 */
export function countTrend(counts: readonly CountAt[], level = 0.95): CountTrend | null {
  const total = sum(counts.map(({ count }) => count));
  const xs = counts.map(({ x }) => x);
  const from = Math.min(...xs);
  const width = Math.max(...xs) - from;
  if (total === 0 || !(width > 0)) return null;
  // On a scale from 0 to 1, so that slopes are of the size of logarithms of ratios.
  const places = counts.map(({ x, ...counted }) => ({ ...counted, t: (x - from) / width }));
  const seen = sum(places.map(({ count, t }) => count * t)) / total;
  const weigh = (slope: number) => {
    const top = Math.max(0, slope);
    const weights = places.map(({ exposure, t }) => exposure * Math.exp(slope * t - top));
    const all = sum(weights);
    return { weights, all, top, mean: sum(weights.map((weight, index) => weight * places[index]!.t)) / all };
  };
  const logLikelihood = (slope: number) => {
    const { all, top } = weigh(slope);
    return total * (slope * seen - Math.log(all) - top);
  };
  const limitAt = (end: 0 | 1) => -total * Math.log(sum(places.filter(({ t }) => t === end).map(({ exposure }) => exposure)));

  const slope = seen === 0 ? -Infinity : seen === 1 ? Infinity : rootNear((b) => weigh(b).mean - seen, 0);
  const best = Number.isFinite(slope) ? logLikelihood(slope) : limitAt(seen as 0 | 1);
  const pearson = Number.isFinite(slope) ? pearsonOf(places, total, weigh(slope)) : 0;
  const df = counts.length - 2;
  const dispersion = df > 0 ? Math.max(1, pearson / df) : 1;
  const cut = (chiSquareQuantile(level, 1) * dispersion) / 2;
  const excess = (b: number) => best - logLikelihood(b) - cut;
  const start = Number.isFinite(slope) ? slope : 0;
  const intercept = Number.isFinite(slope) ? Math.log(total / weigh(slope).all) - weigh(slope).top : 0;
  return {
    slope: slope / width,
    low: slope === -Infinity ? -Infinity : endOf(excess, start, -1) / width,
    high: slope === Infinity ? Infinity : endOf(excess, start, 1) / width,
    rateAt: Number.isFinite(slope) ? (x) => Math.exp(intercept + (slope * (x - from)) / width) : null,
    fitP: df > 0 && Number.isFinite(slope) ? chiSquareUpperTail(pearson, df) : null,
    dispersion,
  };
}

type Place = Counted & { t: number };

function pearsonOf(places: readonly Place[], total: number, { weights, all }: { weights: number[]; all: number }): number {
  return sum(
    places.map(({ count }, index) => {
      const expected = (total * weights[index]!) / all;
      return (count - expected) ** 2 / expected;
    }),
  );
}

const STEPS = 60;

/** A root of a rising function, looked for ever further from `start`. */
function rootNear(f: (b: number) => number, start: number): number {
  for (let step = 1, count = 0; count < STEPS; step *= 2, count++) {
    if (f(start - step) <= 0 && f(start + step) >= 0) return findRoot(f, start - step, start + step);
  }
  throw new RangeError('No slope fits these counts.');
}

/** Where the profile falls by the cut-off, on one side of the best slope or of a place beyond the end looked for. */
function endOf(excess: (b: number) => number, start: number, side: 1 | -1): number {
  let inner = start;
  // With an infinite slope the start may lie outside the interval already.
  for (let step = 1, count = 0; excess(inner) > 0 && count < STEPS; step *= 2, count++) inner -= side * step;
  for (let step = 1, count = 0; count < STEPS; step *= 2, count++) {
    if (excess(inner + side * step) > 0) return findRoot(excess, inner, inner + side * step);
  }
  return side * Infinity;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
