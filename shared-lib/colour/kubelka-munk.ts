/** K/S of an opaque layer of reflectance R, 0 < R ≤ 1: (1 − R)²/2R (Kubelka & Munk 1931). */
export function absorptionOverScattering(reflectance: number): number {
  return (1 - reflectance) ** 2 / (2 * reflectance);
}

/** What a layer would reflect over other backings. */
export interface KubelkaMunkLayer {
  /** Reflectance of a pile of it so thick that more changes nothing, 0–1. */
  infinite: number;
  /** Scattering power SX. */
  scatteringPower: number;
  /** Reflectance over a backing of this reflectance. */
  over: (backing: number) => number;
}

/**
 * The layer behind its reflectances over black and over a backing of reflectance `backing` (Kubelka 1948, J. Opt. Soc.
 * Am. 38, 448). `null` where no such layer exists: the readings contradict the theory, or the layer hides or shows
 * everything.
 */
export function kubelkaMunkLayer(overBlack: number, overBacking: number, backing: number): KubelkaMunkLayer | null {
  if (!(overBlack > 0 && overBlack < overBacking && backing > 0)) return null;
  const a = (overBacking + (overBlack - overBacking + backing) / (overBlack * backing)) / 2;
  if (!(a > 1)) return null;
  const b = Math.sqrt(a * a - 1);
  const quotient = (1 - a * overBlack) / (b * overBlack);
  if (!(quotient > 1)) return null;
  const scatteringPower = Math.log((quotient + 1) / (quotient - 1)) / (2 * b);
  // a − b, which would lose its digits where both are large.
  const infinite = 1 / (a + b);
  return { infinite, scatteringPower, over: (ground) => reflectanceOver(ground, infinite, scatteringPower) };
}

/** Reflectance over a ground of a layer of given R∞ and SX: [1 − Rg(a − ct)]/[a − Rg + ct], ct = b·coth(bSX). */
export function reflectanceOver(ground: number, infinite: number, scatteringPower: number): number {
  const a = (1 / infinite + infinite) / 2;
  const b = (1 / infinite - infinite) / 2;
  const ct = b / Math.tanh(b * scatteringPower);
  return (1 - ground * (a - ct)) / (a - ground + ct);
}
