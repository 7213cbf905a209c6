import { chroma, type Lab } from './lab.ts';

/** Differences sample − reference in lightness, chroma and hue (ISO/CIE 11664-4). */
export interface LabDifference {
  deltaL: number;
  deltaC: number;
  /** Positive: anticlockwise from the reference (a_r·b_s − a_s·b_r ≥ 0). */
  deltaH: number;
}

/**
 * ΔL*, ΔC*ab and ΔH*ab of a pair. ΔH* comes from the vectors themselves, so that it stays accurate for hues that lie
 * close together, where √(ΔE² − ΔL² − ΔC²) cancels.
 */
export function labDifference(reference: Lab, sample: Lab): LabDifference {
  const [L1, a1, b1] = reference;
  const [L2, a2, b2] = sample;
  const C1 = chroma(a1, b1);
  const C2 = chroma(a2, b2);
  return { deltaL: L2 - L1, deltaC: C2 - C1, deltaH: hueDifference(a1, b1, a2, b2, C1 * C2) };
}

/** Chromas so small that the hue of one of them is lost in rounding; their ΔH* is far below any reading. */
export const neutralProduct = 1e-20;

/** ΔH* of two a*b* vectors whose chromas have this product. */
export function hueDifference(a1: number, b1: number, a2: number, b2: number, product: number): number {
  if (product < neutralProduct) return 0;
  const dot = a1 * a2 + b1 * b2;
  const cross = a1 * b2 - a2 * b1;
  const size = dot >= 0 ? Math.abs(cross) * Math.sqrt(2 / (product + dot)) : Math.sqrt(2 * (product - dot));
  return cross < 0 ? -size : size;
}
