import { fitCurve, type CurveFit } from '../statistics/curve-fit.ts';
import { linearModel, saturatingModel, type CoatWeightModel } from './coat-weight-model.ts';

export interface CoatWeightFit {
  model: CoatWeightModel;
  fit: CurveFit;
}

/**
 * The reading over coat weight by the model asked for, else by the one that leaves the smaller residuals; both have two
 * parameters. Falls back to the line where the drawdowns do not show where the reading would level off.
 * @param coatWeights at least three, not all alike.
 */
export function fitCoatWeight(coatWeights: readonly number[], readings: readonly number[], asked: CoatWeightModel['name'] | undefined): CoatWeightFit {
  const line = fitted(linearModel, coatWeights, readings, [[0, Math.max(...readings) / Math.max(...coatWeights)]]);
  if (asked === 'linear') return line;
  const [most, heaviest] = [Math.max(...readings), Math.max(...coatWeights)];
  const starts = [1.1, 1.5, 3, 10].map((times) => [times * most, -Math.log1p(-1 / times) / heaviest]);
  const curve = fitted(saturatingModel, coatWeights, readings, starts);
  const settled = curve.fit.converged && curve.fit.covariance !== null;
  if (asked === 'saturating') return curve;
  return settled && curve.fit.residualSumOfSquares < line.fit.residualSumOfSquares ? curve : line;
}

function fitted(model: CoatWeightModel, x: readonly number[], y: readonly number[], start: number[][]): CoatWeightFit {
  const bounds = model === saturatingModel ? { lower: [0, 0] } : {};
  return { model, fit: fitCurve({ model: model.value, x, y, start, ...bounds }) };
}
