import { censoredRegression } from './censored-regression.ts';
import type { DecayModel } from './decay-models.ts';

/** One wetting tension after some days; `low === high` exact, ±Infinity open. */
export interface DecayReading {
  days: number;
  low: number;
  high: number;
}

export interface DecayFit {
  base: number;
  size: number;
  /** Of the shape, per day; 1 where the shape has no parameter. */
  rate: number;
  /** Scatter of single readings, mN/m. */
  standardDeviation: number;
  logLikelihood: number;
}

/**
 * Scatter is held at or above 0.25 mN/m, half of the 0.5 mN/m to which wetting tensions are reported: brackets that a curve
 * passes without scatter would otherwise claim none.
 */
const smallestSdMNm = 0.25;

/** The likeliest curve of a model through the readings. */
export function fitDecay(model: DecayModel, readings: readonly DecayReading[]): DecayFit {
  return bestOverRates(model, readings, 1e-6, (rate) => fitDecayAtRate(model, readings, rate));
}

/** The likeliest curve with the given rate of its shape. */
export function fitDecayAtRate(model: DecayModel, readings: readonly DecayReading[], rate: number): DecayFit {
  const points = readings.map(({ days, low, high }) => ({ basis: [1, model.shape(days, rate)], low, high }));
  const { coefficients, standardDeviation, logLikelihood } = censoredRegression(points, smallestSdMNm);
  return { base: coefficients[0]!, size: coefficients[1]!, rate, standardDeviation, logLikelihood };
}

/** The likeliest curve with the given size: the base alone is free beside the rate. */
export function fitDecayOfSize(model: DecayModel, readings: readonly DecayReading[], size: number): DecayFit {
  return bestOverRates(model, readings, 1e-3, (rate) => {
    const points = readings.map(({ days, low, high }) => {
      const known = size * model.shape(days, rate);
      return { basis: [1], low: low - known, high: high - known };
    });
    const { coefficients, standardDeviation, logLikelihood } = censoredRegression(points, smallestSdMNm);
    return { base: coefficients[0]!, size, rate, standardDeviation, logLikelihood };
  });
}

/** The likeliest curve that has the tension `tensionMNm` at `days` (Infinity: the floor). */
export function fitDecayThrough(
  model: DecayModel,
  readings: readonly DecayReading[],
  days: number,
  tensionMNm: number,
): DecayFit {
  return bestOverRates(model, readings, 1e-3, (rate) => {
    const fixed = model.shape(days, rate);
    const points = readings.map((reading) => ({
      basis: [model.shape(reading.days, rate) - fixed],
      low: reading.low - tensionMNm,
      high: reading.high - tensionMNm,
    }));
    const { coefficients, standardDeviation, logLikelihood } = censoredRegression(points, smallestSdMNm);
    const size = coefficients[0]!;
    return { base: tensionMNm - size * fixed, size, rate, standardDeviation, logLikelihood };
  });
}

/** Tension of a fitted curve, mN/m. */
export function decayAt(model: DecayModel, fit: Pick<DecayFit, 'base' | 'size' | 'rate'>, days: number): number {
  return fit.base + fit.size * model.shape(days, fit.rate);
}

const gridSize = 16;
const golden = (Math.sqrt(5) - 1) / 2;

/** The best rate to a relative `tolerance`: the best of a grid on a log scale, then golden section between its neighbours. */
function bestOverRates(
  model: DecayModel,
  readings: readonly DecayReading[],
  tolerance: number,
  fitAt: (rate: number) => DecayFit,
): DecayFit {
  const range = model.rates(readings.map((reading) => reading.days));
  if (!range) return fitAt(1);
  const from = Math.log(range.low);
  const step = (Math.log(range.high) - from) / (gridSize - 1);
  const grid = Array.from({ length: gridSize }, (_, index) => fitAt(Math.exp(from + index * step)));
  const top = grid.reduce((best, fit, index) => (fit.logLikelihood > grid[best]!.logLikelihood ? index : best), 0);
  let best = grid[top]!;
  let low = from + Math.max(0, top - 1) * step;
  let high = from + Math.min(gridSize - 1, top + 1) * step;
  const at = (fraction: number) => fitAt(Math.exp(low + fraction * (high - low)));
  let inner = at(1 - golden);
  let outer = at(golden);
  while (high - low > tolerance) {
    for (const fit of [inner, outer]) if (fit.logLikelihood > best.logLikelihood) best = fit;
    if (inner.logLikelihood >= outer.logLikelihood) {
      high = low + golden * (high - low);
      outer = inner;
      inner = at(1 - golden);
    } else {
      low += (1 - golden) * (high - low);
      inner = outer;
      outer = at(golden);
    }
  }
  return best;
}
