import { slopeThroughOrigin, type FadeModel } from './fade-model.ts';

/** Models of the retained fraction, 1 before exposure. All are zero-, first- or stretched first-order kinetics of the colorant. */
export const retentionModels: readonly FadeModel[] = [
  {
    id: 'zero-order',
    title: 'zero order',
    formula: '1 − rate · exposure',
    parameters: [{ name: 'rate', dimension: 'per-exposure' }],
    at: (exposure, [rate]) => 1 - rate! * exposure,
    start: (x, y) => [slopeThroughOrigin(x, y.map((value) => 1 - value))],
    exposureAt: (limit, [rate]) => (rate! > 0 ? (1 - limit) / rate! : Infinity),
  },
  {
    id: 'first-order',
    title: 'first order',
    formula: 'e^(−rate · exposure)',
    parameters: [{ name: 'rate', dimension: 'per-exposure' }],
    at: (exposure, [rate]) => Math.exp(-rate! * exposure),
    start: (x, y) => [firstOrderRate(x, y)],
    exposureAt: (limit, [rate]) => (rate! > 0 ? -Math.log(limit) / rate! : Infinity),
  },
  {
    id: 'stretched-exponential',
    title: 'stretched exponential',
    formula: 'e^(−(exposure / scale)^shape)',
    parameters: [
      { name: 'scale', dimension: 'exposure' },
      { name: 'shape', dimension: 'none' },
    ],
    at: (exposure, [scale, shape]) => Math.exp(-((exposure / scale!) ** shape!)),
    start: (x, y) => {
      const rate = firstOrderRate(x, y);
      return [rate > 0 ? 1 / rate : 100 * Math.max(...x), 1];
    },
    exposureAt: (limit, [scale, shape]) => scale! * (-Math.log(limit)) ** (1 / shape!),
    bounds: (farthest) => ({ lower: [1e-6 * farthest, 0.1], upper: [Infinity, 10] }),
  },
];

/** Rate from the logarithms; a reading at or below nothing left counts as one percent. */
function firstOrderRate(x: readonly number[], y: readonly number[]): number {
  return slopeThroughOrigin(x, y.map((value) => -Math.log(Math.max(value, 0.01))));
}
