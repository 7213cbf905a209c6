/** Mean contact angle of one liquid and how well its drops know it. */
export interface AngleScatter {
  /** Drops. */
  n: number;
  meanDeg: number;
  /** Standard deviation of the drops, `null` for a single one. */
  sdDeg: number | null;
  /** Standard uncertainty of the mean, `null` where nothing tells it. */
  uncertaintyDeg: number | null;
  /** Degrees of freedom behind it. */
  df: number;
}

/** Drops from which a liquid's own scatter is used; fewer say too little and take the scatter pooled over all liquids. */
export const ownScatterFrom = 3;

/**
 * Means and standard uncertainties of replicate angles, one list of degrees per liquid. A liquid with fewer than three drops
 * takes the standard deviation pooled over all liquids with replicates.
 */
export function angleScatter(anglesDeg: readonly (readonly number[])[]): AngleScatter[] {
  const own = anglesDeg.map((angles) => {
    const n = angles.length;
    const meanDeg = angles.reduce((sum, angle) => sum + angle, 0) / n;
    return { n, meanDeg, squares: angles.reduce((sum, angle) => sum + (angle - meanDeg) ** 2, 0) };
  });
  const pooledDf = own.reduce((sum, { n }) => sum + n - 1, 0);
  const pooledSquares = own.reduce((sum, { squares }) => sum + squares, 0);
  return own.map(({ n, meanDeg, squares }) => {
    const sdDeg = n > 1 ? Math.sqrt(squares / (n - 1)) : null;
    const usesOwn = n >= ownScatterFrom;
    const df = usesOwn ? n - 1 : pooledDf;
    const sd = usesOwn ? sdDeg! : Math.sqrt(pooledSquares / pooledDf);
    return { n, meanDeg, sdDeg, df, uncertaintyDeg: df > 0 ? sd / Math.sqrt(n) : null };
  });
}
