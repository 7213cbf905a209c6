import { aiccOfLeastSquares } from '../statistics/akaike.ts';
import { fitCurve, type CurveFit, type CurveProblem } from '../statistics/curve-fit.ts';
import type { FadeModel } from './fade-model.ts';
import type { FadeSeries } from './fade-series.ts';

/** One model fitted to one series. */
export interface SeriesFit {
  series: FadeSeries;
  problem: CurveProblem;
  fit: CurveFit;
  /** `null` with too few readings for the criterion, or an exact fit. */
  aicc: number | null;
}

/** One model fitted to every series. */
export interface ModelFit {
  model: FadeModel;
  series: SeriesFit[];
  /** Sum over the series, `null` when one of them has none. */
  aicc: number | null;
}

/**
 * Fits each model to each series. A model that needs as many readings as a series has is left out: it would run through
 * all of them and leave nothing to judge it by.
 * @param unfaded value before exposure, 1 or 0: a reading of just that at exposure 0 is the reference and no evidence.
 */
export function fitFadeModels(models: readonly FadeModel[], series: readonly FadeSeries[], unfaded: 0 | 1): ModelFit[] {
  const evidence = series.map((one) => withoutReference(one, unfaded));
  return models
    .filter((model) => evidence.every(({ exposures }) => exposures.length > model.parameters.length))
    .map((model) => {
      const fits = evidence.map((one, index) => fitOne(model, one, series[index]!));
      const criteria = fits.map(({ aicc }) => aicc);
      return { model, series: fits, aicc: criteria.includes(null) ? null : criteria.reduce<number>((sum, aicc) => sum + aicc!, 0) };
    });
}

function fitOne(model: FadeModel, { exposures, values }: FadeSeries, series: FadeSeries): SeriesFit {
  const exposed = exposures.map((exposure, index) => [exposure, values[index]!] as const).filter(([exposure]) => exposure > 0);
  const bounds = model.bounds?.(Math.max(...exposures));
  const problem: CurveProblem = { model: model.at, x: exposures, y: values, ...bounds };
  const start = model.start(
    exposed.map(([exposure]) => exposure),
    exposed.map(([, value]) => value),
  );
  const fit = fitCurve({ ...problem, start: [start] });
  return { series, problem, fit, aicc: aiccOfLeastSquares(fit.residualSumOfSquares, exposures.length, model.parameters.length) };
}

function withoutReference({ name, exposures, values }: FadeSeries, unfaded: number): FadeSeries {
  const kept = exposures.map((_, index) => index).filter((index) => exposures[index]! > 0 || values[index] !== unfaded);
  return { name, exposures: kept.map((index) => exposures[index]!), values: kept.map((index) => values[index]!) };
}
