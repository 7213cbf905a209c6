/** Where two curves part: around their largest difference, as far as they differ by half of it and more. */
export interface PartingBand {
  fromNm: number;
  toNm: number;
  /** Where they differ most. */
  atNm: number;
  /** sample − reference there, 0–1. */
  difference: number;
}

/** Differences below this, 0–1, are the scatter of a good instrument; curves so close do not part. */
const leastDifference = 0.002;

/** `null` where the curves never differ by 0.2 % or more. */
export function partingBand(wavelengthsNm: readonly number[], sample: readonly number[], reference: readonly number[]): PartingBand | null {
  const differences = sample.map((value, index) => value - reference[index]!);
  const at = differences.reduce((widest, value, index) => (Math.abs(value) > Math.abs(differences[widest]!) ? index : widest), 0);
  const difference = differences[at]!;
  if (Math.abs(difference) < leastDifference) return null;
  const belongs = (index: number) => differences[index] !== undefined && differences[index] / difference >= 0.5;
  let from = at;
  let to = at;
  while (belongs(from - 1)) from -= 1;
  while (belongs(to + 1)) to += 1;
  return { fromNm: wavelengthsNm[from]!, toNm: wavelengthsNm[to]!, atNm: wavelengthsNm[at]!, difference };
}
