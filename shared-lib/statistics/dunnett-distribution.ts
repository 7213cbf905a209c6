import { normalLogDensity, normalUpperTail } from './distributions.ts';
import { integrate } from './gauss-legendre.ts';
import { studentize } from './studentized.ts';
import type { Studentized } from './studentized.ts';

const FARTHEST_NORMAL = 9;
/** A treatment known much better than the control is taken for exactly known from here on. */
const MOST_SHARED = 0.995;
/** More different shares than this are rounded to as many steps. */
const MOST_KINDS = 25;

/**
 * Distribution of the largest |t| when several treatments are compared with one control.
 * @param shared per treatment, the root of the control's share in the variance of the difference:
 *   √(n/(n + n₀)) for one common spread; differences i and j then correlate by sharedᵢ·sharedⱼ.
 * @throws RangeError for no treatment or a share outside 0 to 1.
 * Source: C. W. Dunnett, Biometrics 20 (1964) 482; product correlation: C. W. Dunnett, M. Sobel, Biometrika 42 (1955) 258.
 * The two-sided table of Dunnett's first paper (1955) is an approximation and is not reproduced.
 */
export function dunnettDistribution(shared: readonly number[]): Studentized {
  if (shared.length === 0 || !shared.every((share) => share >= 0 && share <= 1)) {
    throw new RangeError('A comparison with a control needs at least one treatment, each with a share between 0 and 1.');
  }
  const counts = countShares(shared);
  const key = JSON.stringify([...counts].sort(([a], [b]) => a - b));
  const found = known.get(key) ?? studentize(largestOf(counts));
  known.delete(key);
  known.set(key, found);
  if (known.size > MOST_KNOWN) known.delete(known.keys().next().value!);
  return found;
}

/** Tables of the designs met last: many responses of one set of trials share theirs. */
const known = new Map<string, Studentized>();
const MOST_KNOWN = 32;

/** ln P(largest |z| > w) for spread 1. */
function largestOf(counts: ReadonlyMap<number, number>): (w: number) => number {
  const kinds = [...counts].map(([share, count]) => ({ share, count, own: Math.sqrt(1 - share * share) }));
  const sharpest = Math.min(...kinds.map(({ own, share }) => (share > 0 ? own / share : Infinity)));
  const panels = Math.ceil(2 / Math.min(1, sharpest));
  return (w) => {
    // z is the control's deviation. The chance that no treatment strays is a product, the tail its complement.
    const integrand = (z: number) => {
      let logInside = 0;
      for (const { share, count, own } of kinds) {
        const near = (w - share * z) / own;
        const far = (w + share * z) / own;
        const outside = normalUpperTail(near) + (far > 9 && far > near + 9 ? 0 : normalUpperTail(far));
        logInside += count * Math.log1p(-Math.min(1, outside));
      }
      return Math.exp(normalLogDensity(z)) * -Math.expm1(logInside);
    };
    // Far out the integrand lies where the control itself strays, so the stretch grows with w; it is even in z.
    return Math.log(2 * integrate(integrand, 0, FARTHEST_NORMAL + w, panels + Math.ceil(w / 5)));
  };
}

/** How often each share occurs. Very many different ones are rounded: single shares then hardly matter. */
function countShares(shared: readonly number[]): Map<number, number> {
  const tally = (round: (share: number) => number) => {
    const counts = new Map<number, number>();
    for (const share of shared) {
      const capped = Math.min(round(share), MOST_SHARED);
      counts.set(capped, (counts.get(capped) ?? 0) + 1);
    }
    return counts;
  };
  const exact = tally((share) => share);
  return exact.size <= MOST_KINDS ? exact : tally((share) => Math.round(share * MOST_KINDS) / MOST_KINDS);
}
