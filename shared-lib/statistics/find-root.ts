const MOST_STEPS = 200;

/**
 * A root of a continuous `f` between `a` and `b`, where its signs differ.
 * @param tolerance absolute width of the final bracket; the default goes to the resolution of a double.
 * @throws RangeError when the signs at the ends do not differ or an end is not a number.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
 */
export function findRoot(f: (x: number) => number, a: number, b: number, tolerance = 0): number {
  let best = b;
  let previous = a;
  let fBest = f(best);
  let fPrevious = f(previous);
  if (fPrevious === 0) return previous;
  if (fBest === 0) return best;
  if (!(fBest > 0 !== fPrevious > 0) || Number.isNaN(fBest) || Number.isNaN(fPrevious)) {
    throw new RangeError(`No change of sign between ${a} and ${b}.`);
  }
  let other = previous;
  let fOther = fPrevious;
  let step = best - previous;
  let stepBefore = step;
  for (let count = 0; count < MOST_STEPS; count++) {
    if (Math.abs(fOther) < Math.abs(fBest)) {
      [previous, best, other] = [best, other, best];
      [fPrevious, fBest, fOther] = [fBest, fOther, fBest];
    }
    const resolution = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2 + Number.MIN_VALUE;
    const half = (other - best) / 2;
    if (Math.abs(half) <= resolution || fBest === 0) return best;
    if (Math.abs(stepBefore) < resolution || Math.abs(fPrevious) <= Math.abs(fBest)) {
      step = half;
      stepBefore = half;
    } else {
      let [p, q] = interpolate(previous, best, other, fPrevious, fBest, fOther, half);
      if (p > 0) q = -q;
      else p = -p;
      const accepted = 2 * p < Math.min(3 * half * q - Math.abs(resolution * q), Math.abs(stepBefore * q));
      stepBefore = accepted ? step : half;
      step = accepted ? p / q : half;
    }
    previous = best;
    fPrevious = fBest;
    best += Math.abs(step) > resolution ? step : Math.sign(half) * resolution;
    fBest = f(best);
    if (fBest > 0 === fOther > 0) {
      other = previous;
      fOther = fPrevious;
      step = best - previous;
      stepBefore = step;
    }
  }
  return best;
}

/** Numerator and denominator of the secant or inverse quadratic step. */
function interpolate(a: number, b: number, c: number, fa: number, fb: number, fc: number, half: number): [number, number] {
  const s = fb / fa;
  if (a === c) return [2 * half * s, 1 - s];
  const q = fa / fc;
  const r = fb / fc;
  return [s * (2 * half * q * (q - r) - (b - a) * (r - 1)), (q - 1) * (r - 1) * (s - 1)];
}
