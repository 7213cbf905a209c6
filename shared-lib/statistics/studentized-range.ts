import { normalCdf, normalLogDensity, normalUpperTail } from './distributions.ts';
import { integrate } from './gauss-legendre.ts';
import { studentize } from './studentized.ts';
import type { Studentized } from './studentized.ts';

const FARTHEST_NORMAL = 9;

/**
 * P(range of `count` standard normals > w), accurate far out.
 * Source: H. O. Hartley, Biometrika 32 (1942) 334, written for the tail so that small probabilities keep their digits.
 */
export function normalRangeUpperTail(w: number, count: number): number {
  if (w <= 0) return 1;
  const others = count - 1;
  // z is the largest; the tail is what is missing from "all others within w below it".
  const integrand = (z: number) => {
    const below = normalCdf(z);
    const beyond = normalUpperTail(w - z);
    if (below === 0) return 0;
    return Math.exp(normalLogDensity(z) + others * Math.log(below)) * -Math.expm1(others * Math.log1p(-Math.min(1, beyond / below)));
  };
  return count * integrate(integrand, -FARTHEST_NORMAL, FARTHEST_NORMAL + w, Math.ceil((2 * FARTHEST_NORMAL + w) / 6));
}

/**
 * The studentized range of `count` means: what Tukey's and Games and Howell's comparisons are judged by.
 * Reaches 1e-12 against 40-digit references (`tests/reference/statistics/multiple-comparisons.test.ts`).
 * @throws RangeError unless count is a whole number, at least 2.
 */
export function studentizedRange(count: number): Studentized {
  if (!Number.isInteger(count) || count < 2) throw new RangeError(`A range needs at least two means, not ${count}.`);
  let found = known.get(count);
  if (!found) {
    found = studentize((w) => Math.log(normalRangeUpperTail(w, count)));
    known.set(count, found);
  }
  return found;
}

/** Their tables cost more than a comparison, and a table of trials makes many with one count. */
const known = new Map<number, Studentized>();
