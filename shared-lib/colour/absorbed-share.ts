/** Share of the light that a density takes away, 1 − 10^−D, to full precision where D is small. */
export function absorbedShare(density: number): number {
  return -Math.expm1(-Math.LN10 * density);
}
