import type { Flag } from '../calculation/result.ts';
import type { Lab } from './lab.ts';
import { colourMatching } from './observers.ts';
import { xyzFromLab, type Xyz } from './xyz.ts';

/** D50, 2° (ISO 13655): near enough to tell a slip from a colour under any usual light. */
const white: Xyz = [96.42, 100, 82.49];

/** Flags of CIELAB coordinates that no real surface has: most often a slip of sign or column. */
export function realColourFlags(lab: Lab, where: string): Flag[] {
  const xyz = xyzFromLab(lab, white);
  if (Math.min(...xyz) < 0 || outsideLocus(xyz)) {
    return [{ code: 'no-real-colour', where, text: `L* ${lab[0]}, a* ${lab[1]}, b* ${lab[2]} is outside the colours that light can have; check signs and columns.` }];
  }
  if (lab[0] > 100) {
    return [{ code: 'above-white', where, text: `L* ${lab[0]} is lighter than a perfect white: a fluorescent print, or a slip.` }];
  }
  return [];
}

/** Whether a chromaticity lies outside the spectral locus closed by the purple line. */
function outsideLocus([X, Y, Z]: Xyz): boolean {
  const total = X + Y + Z;
  if (total <= 0) return false;
  const [x, y] = [X / total, Y / total];
  const { x: xs, y: ys, z: zs } = colourMatching[2];
  // Beyond 700 nm the locus stays at one place.
  const locus = Array.from({ length: 65 }, (_, index) => {
    const sum = xs[index]! + ys[index]! + zs[index]!;
    return [xs[index]! / sum, ys[index]! / sum] as const;
  });
  let inside = false;
  locus.forEach(([x1, y1], index) => {
    const [x2, y2] = locus[(index + 1) % locus.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) inside = !inside;
  });
  return !inside;
}
