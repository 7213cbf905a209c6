import { absorptionOverScattering } from './kubelka-munk.ts';

/** K/S of each band less that of the substrate, which must be of equal length. */
export function netAbsorption(reflectance: readonly number[], substrate: readonly number[] | undefined): number[] {
  return reflectance.map((value, band) => absorptionOverScattering(value) - (substrate ? absorptionOverScattering(substrate[band]!) : 0));
}

/** Strength of a sample, as a fraction of the standard's, at the band where the standard absorbs most. */
export function strengthAtMaximum(sample: readonly number[], standard: readonly number[]): number {
  const band = standard.reduce((at, value, index) => (value > standard[at]! ? index : at), 0);
  return sample[band]! / standard[band]!;
}

/** Strength by the sums of K/S over all bands, each weighted by `weights` (default 1). */
export function strengthBySum(sample: readonly number[], standard: readonly number[], weights?: ArrayLike<number>): number {
  const sum = (values: readonly number[]) => values.reduce((total, value, band) => total + value * (weights?.[band] ?? 1), 0);
  return sum(sample) / sum(standard);
}
