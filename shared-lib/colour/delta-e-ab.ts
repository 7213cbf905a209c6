import type { Lab } from './lab.ts';

/** ΔE*ab, the CIE 1976 colour difference (ISO/CIE 11664-4). Symmetric. */
export function deltaEab(reference: Lab, sample: Lab): number {
  const dL = sample[0] - reference[0];
  const da = sample[1] - reference[1];
  const db = sample[2] - reference[2];
  return Math.sqrt(dL * dL + da * da + db * db);
}
