import type { CurveModel } from '../statistics/curve-fit.ts';
import { fitCensoredCurve, type CensoredCurveFit, type CurveReading } from './censored-curve.ts';

/** Parameters in this order: initial and plateau strength (N/15 mm), rate (1/h), and for the second the lag (h). */
export interface BuildModel {
  name: 'first-order' | 'first-order with lag';
  title: string;
  parameters: ('initial' | 'plateau' | 'rate' | 'lag')[];
  curve: CurveModel;
}

export interface FittedBuild {
  model: BuildModel;
  curve: CensoredCurveFit;
}

export const BUILD_MODELS: BuildModel[] = [
  {
    name: 'first-order',
    title: 'first order to a plateau',
    parameters: ['initial', 'plateau', 'rate'],
    curve: (hours, [initial, plateau, rate]) => firstOrder(hours, initial!, plateau!, rate!),
  },
  {
    name: 'first-order with lag',
    title: 'first order to a plateau after a lag',
    parameters: ['initial', 'plateau', 'rate', 'lag'],
    curve: (hours, [initial, plateau, rate, lag]) => firstOrder(Math.max(0, hours - lag!), initial!, plateau!, rate!),
  },
];

/** initial + (plateau − initial)·(1 − e^(−rate·hours)). */
function firstOrder(hours: number, initial: number, plateau: number, rate: number): number {
  return initial + (plateau - initial) * -Math.expm1(-rate * hours);
}

/** A plateau beyond this many times the highest reading is no plateau that the readings show. */
const HIGHEST_PLATEAU = 20;

/** Shapes tried before the fit: rates and lags as shares of the longest time. */
const RATE_SHARES = [0.3, 0.7, 1.5, 3, 6, 12, 25, 50];
const LAG_SHARES = [0, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4];

/** The curve of a model through the readings. */
export function fitBuild(model: BuildModel, readings: readonly CurveReading[]): FittedBuild {
  const longest = Math.max(...readings.map(({ x }) => x));
  const most = HIGHEST_PLATEAU * Math.max(...readings.map(({ y }) => y));
  const count = model.parameters.length;
  const curve = fitCensoredCurve(readings, {
    model: model.curve,
    start: [startOf(model, readings, longest)],
    lower: [0, 0, 1e-4 / longest, 0].slice(0, count),
    upper: [most, most, 1e4 / longest, longest].slice(0, count),
  });
  return { model, curve };
}

/** The best of a grid of rates and lags; for each, initial and plateau strength are a straight-line fit. */
function startOf(model: BuildModel, readings: readonly CurveReading[], longest: number): number[] {
  const lags = model.parameters.includes('lag') ? LAG_SHARES : [0];
  let best = { squares: Infinity, parameters: [0, 0, 1 / longest, 0] };
  for (const rate of RATE_SHARES.map((share) => share / longest)) {
    for (const lag of lags.map((share) => share * longest)) {
      const [initial, plateau] = straightLine(readings.map(({ x, y }) => ({ x: firstOrder(Math.max(0, x - lag), 0, 1, rate), y })));
      const parameters = [Math.max(0, initial), Math.max(0, plateau), rate, lag];
      const squares = readings.reduce((sum, { x, y }) => sum + (y - BUILD_MODELS[1]!.curve(x, parameters)) ** 2, 0);
      if (squares < best.squares) best = { squares, parameters };
    }
  }
  return best.parameters.slice(0, model.parameters.length);
}

/** Values of the least squares line at x = 0 and x = 1; level where x has no spread. */
function straightLine(points: { x: number; y: number }[]): [number, number] {
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / points.length;
  const sxx = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  const slope = sxx === 0 ? 0 : points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0) / sxx;
  return [meanY - slope * meanX, meanY + slope * (1 - meanX)];
}

/** Hours at which the curve reaches `required`; `null` when it never does. */
export function hoursAt(required: number, [initial, plateau, rate, lag = 0]: readonly number[]): number | null {
  if (required <= initial!) return 0;
  if (required >= plateau!) return null;
  return lag - Math.log1p(-(required - initial!) / (plateau! - initial!)) / rate!;
}
