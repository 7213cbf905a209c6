/**
 * Akaike's criterion for small samples (AICc) of a least squares fit; the error variance counts as one parameter.
 * Only differences between models fitted to the same readings mean anything.
 * @param parameters fitted parameters, without the error variance.
 * @returns `null` when n − k − 1 ≤ 0 (k = parameters + 1) or the fit is exact, so that the criterion has no value.
 * Source: C. M. Hurvich, C.-L. Tsai, Biometrika 76 (1989) 297.
 */
export function aiccOfLeastSquares(residualSumOfSquares: number, n: number, parameters: number): number | null {
  if (!(residualSumOfSquares > 0)) return null;
  return withCorrection(n * Math.log(residualSumOfSquares / n), n, parameters + 1);
}

/**
 * Akaike's criterion for small samples (AICc) of a likelihood fit.
 * @param parameters all fitted parameters, a scale among them.
 * @returns `null` when n − parameters − 1 ≤ 0.
 */
export function aiccOfLikelihood(logLikelihood: number, n: number, parameters: number): number | null {
  return withCorrection(-2 * logLikelihood, n, parameters);
}

function withCorrection(deviance: number, n: number, k: number): number | null {
  if (n - k - 1 <= 0 || !Number.isFinite(deviance)) return null;
  return deviance + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}
