/** A model that turns contact angles of known liquids into the surface energy of the solid. Holds its liquids. */
export interface WettingModel {
  /** Names of what it gives, in the order of `out`. */
  outputs: readonly { key: string; unit: string }[];
  /** Parameters fitted; with as many liquids the solution is exact. */
  parameters: number;
  /**
   * How much the choice of liquids magnifies errors of the angles: condition number of the equations, each scaled to length 1
   * (Zisman: by the range of the tensions); `null` where every liquid stands alone.
   */
  condition: number | null;
  /**
   * Writes the outputs for the cosines of the contact angles, one per liquid.
   * @returns false when there is no physical solution; `out` is then without meaning
   */
  solve(cosines: Float64Array, out: Float64Array): boolean;
  /** Cosine of the angle that these outputs predict for liquid `index`. */
  predict(out: Float64Array, index: number): number;
  /** Outputs whose unconstrained root came out negative; squaring would have hidden that, so `solve` set them to zero. */
  negativeRoots(cosines: Float64Array): string[];
}
