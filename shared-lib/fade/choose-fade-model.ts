import type { ModelFit } from './fit-fade-models.ts';

export interface ModelChoice {
  chosen: ModelFit;
  why: 'aicc' | 'exact' | 'too-few';
}

/** Residuals below this share of the scale are rounding, not scatter: no reading is that fine. */
const exactShare = 1e-6;

/**
 * One model for all series. By the smallest sum of AICc; where a model runs through the readings exactly, the simplest
 * such; with too few readings for the criterion, the model named.
 * @param fits in the order from simple to involved, at least one.
 * @param scale size of the quantity fitted: 1 for a fraction, the largest ΔE.
 * @param fallback id of the model taken when there are too few readings to choose.
 */
export function chooseFadeModel(fits: readonly ModelFit[], scale: number, fallback: string): ModelChoice {
  const exact = fits.find((fit) => isExact(fit, scale));
  if (exact) return { chosen: exact, why: 'exact' };
  const judged = fits.filter(({ aicc }) => aicc !== null);
  if (judged.length < 2) return { chosen: fits.find(({ model }) => model.id === fallback) ?? fits[0]!, why: 'too-few' };
  return { chosen: judged.reduce((a, b) => (b.aicc! < a.aicc! ? b : a)), why: 'aicc' };
}

function isExact({ series }: ModelFit, scale: number): boolean {
  return series.every(({ fit, problem }) => Math.sqrt(fit.residualSumOfSquares / problem.x.length) <= exactShare * scale);
}
