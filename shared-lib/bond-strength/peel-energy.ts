/** How the plies are pulled apart: both tails at 90° (T-peel), one tail folded back, or one tail upright. */
export type PeelGeometry = 't-peel' | '180-degree' | '90-degree';

/** Length of tail pulled per length of bond opened. */
export const TAIL_PER_BOND: Record<PeelGeometry, 1 | 2> = { 't-peel': 2, '180-degree': 2, '90-degree': 1 };

/**
 * Work per area of bond opened in a steady peel, J/m²: 2·F/b for T-peel and 180°, F/b for 90°. Bending and stretching of
 * the tails are in it, so that only similar laminates may be compared (textbook; ASTM F904-16 says the same of the force).
 */
export function peelEnergy(forceN: number, widthMm: number, geometry: PeelGeometry): number {
  return (TAIL_PER_BOND[geometry] * forceN) / (widthMm / 1000);
}
