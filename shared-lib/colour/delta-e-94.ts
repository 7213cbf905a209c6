import { chroma, type Lab } from './lab.ts';
import { labDifference } from './lab-difference.ts';

/**
 * ΔE*94 with the graphic-arts weights kL = 1, K1 = 0.045, K2 = 0.015 (CIE 116-1995). Not symmetric: the weights follow
 * the reference's chroma.
 */
export function deltaE94(reference: Lab, sample: Lab): number {
  const { deltaL, deltaC, deltaH } = labDifference(reference, sample);
  const C = chroma(reference[1], reference[2]);
  const c = deltaC / (1 + 0.045 * C);
  const h = deltaH / (1 + 0.015 * C);
  return Math.sqrt(deltaL * deltaL + c * c + h * h);
}
