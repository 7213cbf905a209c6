/** A curve of fading against exposure that starts unfaded: retained fraction 1, or ΔE 0. */
export interface FadeModel {
  /** Kebab-case, as in the result table. */
  id: string;
  title: string;
  formula: string;
  /** Names of the parameters in the order of the vectors; a rate is per unit of exposure, a scale an exposure. */
  parameters: readonly FadeParameter[];
  /** Retained fraction or ΔE at an exposure. */
  at: (exposure: number, parameters: readonly number[]) => number;
  /** Where a fit can begin; exposures all above 0. */
  start: (exposures: readonly number[], values: readonly number[]) => number[];
  /** Exposure at which the curve comes to `limit`; Infinity where it never does. */
  exposureAt: (limit: number, parameters: readonly number[]) => number;
  /** Limits of the parameters that keep the curve defined, given the farthest exposure read. */
  bounds?: (farthest: number) => { lower: number[]; upper: number[] };
}

export interface FadeParameter {
  name: 'rate' | 'scale' | 'shape' | 'plateau';
  dimension: 'per-exposure' | 'exposure' | 'none';
}

/** Slope of the line through the origin that fits best. */
export function slopeThroughOrigin(x: readonly number[], y: readonly number[]): number {
  let xy = 0;
  let xx = 0;
  x.forEach((at, index) => {
    xy += at * y[index]!;
    xx += at * at;
  });
  return xy / xx;
}
