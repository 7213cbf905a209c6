/** Terms smaller than e^−NEGLIGIBLE times the largest are left out. */
const NEGLIGIBLE = 38;
const POINTS = 240;
/** −ln s beyond which nothing is looked for. */
const SMALLEST_SCALE = 400;

/**
 * Mean of g(s) over s = σ̂/σ, the root of a chi-square with `df` degrees of freedom over `df`: what a probability
 * becomes when the spread is estimated.
 * @param logOf ln g(s), smooth; −Infinity where g is zero.
 * @param df above 0; Infinity gives g(1).
 *
 * The trapezoidal rule in ln s, whose integrand dies away on both sides, so that its error does too; the points are laid
 * where the integrand is, which keeps the relative precision of tails.
 */
export function averageOverScale(logOf: (s: number) => number, df: number): number {
  if (df === Infinity) return Math.exp(logOf(1));
  const density = (u: number) => df * u - (df / 2) * (Math.exp(2 * u) - 1);
  return sum((u) => density(u) + logOf(Math.exp(u)), df) / sum(density, df);
}

/** Trapezoidal sum of e^f over the stretch where it is not negligible. */
function sum(f: (u: number) => number, df: number): number {
  const unit = 1 / Math.sqrt(2 * df);
  const peak = peakOf(f, unit);
  const top = f(peak);
  if (top === -Infinity) return 0;
  const edge = (direction: 1 | -1) => {
    let inside = 0;
    let outside = unit;
    while (f(peak + direction * outside) > top - NEGLIGIBLE && outside < 1e3) [inside, outside] = [outside, outside * 2];
    for (let round = 0; round < 12; round++) {
      const middle = (inside + outside) / 2;
      if (f(peak + direction * middle) > top - NEGLIGIBLE) inside = middle;
      else outside = middle;
    }
    return peak + direction * outside;
  };
  const low = edge(-1);
  const step = (edge(1) - low) / POINTS;
  let total = 0;
  for (let i = 0; i <= POINTS; i++) total += Math.exp(f(low + i * step));
  return total * step;
}

/** Where f is largest, to a fraction of its width: it has one peak, and is finite for small s if anywhere. */
function peakOf(f: (u: number) => number, unit: number): number {
  let best = 0;
  let value = f(0);
  while (value === -Infinity && best > -SMALLEST_SCALE) value = f(--best);
  for (let step = 2; step > unit / 8; step /= 2) {
    for (const direction of [1, -1]) {
      for (;;) {
        const next = best + direction * step;
        const there = Math.abs(next) < SMALLEST_SCALE ? f(next) : -Infinity;
        if (!(there > value)) break;
        [best, value] = [next, there];
      }
    }
  }
  return best;
}
