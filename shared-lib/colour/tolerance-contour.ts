import { findRoot } from '../statistics/find-root.ts';
import type { CmcWeights } from './delta-e-cmc.ts';
import { differenceFormulas, type Tolerance } from './difference-formulas.ts';
import type { Lab } from './lab.ts';

const directions = 72;
const farthest = 512;

/** The closed line of a*, b* that lie just on the tolerance around a reference at the reference's own lightness. */
export function toleranceContour(reference: Lab, { on, limit }: Tolerance, cmc: CmcWeights): { a: number; b: number }[] {
  const [L, a, b] = reference;
  return Array.from({ length: directions + 1 }, (_, index) => {
    const angle = (2 * Math.PI * index) / directions;
    const at = (distance: number): Lab => [L, a + distance * Math.cos(angle), b + distance * Math.sin(angle)];
    const excess = (distance: number) => differenceFormulas[on].of(reference, at(distance), cmc) - limit;
    let outside = limit;
    while (excess(outside) < 0 && outside < farthest) outside *= 2;
    const [, onA, onB] = at(outside < farthest ? findRoot(excess, 0, outside, 1e-6) : farthest);
    return { a: onA, b: onB };
  });
}
