import { chroma, hueDeg, type Lab } from './lab.ts';
import { labDifference } from './lab-difference.ts';

/** Weights of lightness and chroma: 2:1 for acceptability, 1:1 for perceptibility. */
export interface CmcWeights {
  l: number;
  c: number;
}

/** ΔE CMC(l:c) (ISO 105-J03). Not symmetric: the weights follow the reference. */
export function deltaECmc(reference: Lab, sample: Lab, weights: CmcWeights): number {
  const [L, a, b] = reference;
  const { deltaL, deltaC, deltaH } = labDifference(reference, sample);
  const C = chroma(a, b);
  const h = hueDeg(a, b);
  const SL = L < 16 ? 0.511 : (0.040975 * L) / (1 + 0.01765 * L);
  const SC = (0.0638 * C) / (1 + 0.0131 * C) + 0.638;
  const C4 = C ** 4;
  const F = Math.sqrt(C4 / (C4 + 1900));
  const radians = Math.PI / 180;
  const T =
    h >= 164 && h <= 345
      ? 0.56 + Math.abs(0.2 * Math.cos((h + 168) * radians))
      : 0.36 + Math.abs(0.4 * Math.cos((h + 35) * radians));
  const SH = SC * (F * T + 1 - F);
  return Math.hypot(deltaL / (weights.l * SL), deltaC / (weights.c * SC), deltaH / SH);
}
