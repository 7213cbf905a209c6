import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { curveBand, fitCurve } from './curve-fit.ts';
import type { CurveFit } from './curve-fit.ts';
import { curveModels } from './curve-models.ts';
import type { NamedCurve } from './curve-models.ts';
import { studentTQuantile } from './distributions.ts';
import { levelSchema } from './level.ts';
import { refuseAs } from './refuse-as.ts';

const startSchema = z.array(z.number()).min(1).max(20);

const input = z.strictObject({
  model: z.enum(Object.keys(curveModels) as [string, ...string[]]),
  x: z.array(z.number()).min(1).max(10_000),
  y: z.array(z.number()).min(1).max(10_000),
  /** One starting point, or several of which the best end is kept. */
  start: z.union([startSchema, z.array(startSchema).min(1).max(20)]),
  weights: z.array(z.number().positive()).max(10_000).optional(),
  level: levelSchema,
});

export const fitCalculation = defineCalculation({
  id: 'fit',
  version: '1',
  title: 'Curve fitted by least squares',
  input,
  compute: ({ model, x, y, start, weights, level }) => {
    const curve = curveModels[model]!;
    const starts = (Array.isArray(start[0]) ? start : [start]) as number[][];
    if (y.length !== x.length) throw new InputError('y', y.length, `y needs one value per x: ${x.length}, not ${y.length}.`);
    if (weights && weights.length !== x.length) throw new InputError('weights', weights.length, `weights needs one value per x: ${x.length}, not ${weights.length}.`);
    const odd = starts.find((point) => point.length !== curve.parameters);
    if (odd) throw new InputError('start', odd, `start needs ${curve.parameters} values for ${model}, not ${odd.length}.`);
    if (x.length < curve.parameters) throw new InputError('x', x.length, `x needs at least ${curve.parameters} points for ${model}, not ${x.length}.`);
    const fit = refuseAs('start', start, () => fitCurve({ model: curve.model, x, y, weights, start: starts }));
    return {
      results: resultsOf(fit, x.length, level),
      table: fit.converged ? parameterRows(fit, level) : [],
      flags: fit.converged ? [] : [notConverged],
      notes: notesOf(fit, curve),
      figures: fit.converged ? [figureOf(fit, model, curve, x, y, level)] : [],
    };
  },
  columns: [
    { key: 'parameter', title: 'Parameter' },
    { key: 'value', title: 'Value' },
    { key: 'standardError', title: 'Standard error' },
    { key: 'low', title: 'Low' },
    { key: 'high', title: 'High' },
  ],
  cautions: [],
  sources: [
    'Models: NIST Statistical Reference Datasets, nonlinear regression',
    'Levenberg–Marquardt after J. J. Moré, Lecture Notes in Mathematics 630 (1978) 105; convergence after D. M. Bates, D. G. Watts, Technometrics 23 (1981) 179',
  ],
});

const notConverged: Flag = {
  code: 'not-converged',
  where: 'start',
  text: 'The search did not come to rest from these starting values, so no parameters are given; start nearer to the answer.',
};

/** `converged` is 1 or 0; a search that did not come to rest gives no parameters. */
function resultsOf(fit: CurveFit, n: number, level: number): Record<string, ResultValue> {
  const results: Record<string, ResultValue> = {};
  parameterRows(fit, level).forEach(({ parameter, value, standardError, low, high }) => {
    const known = fit.converged && low !== null;
    results[parameter] = { value: fit.converged ? value : null, unit: '', low: known ? low : null, high: known ? high : null, level: known ? level : null, n, bound: 'exact' };
    results[`${parameter}StandardError`] = valueWithoutInterval(fit.converged ? standardError : null, '', n);
  });
  results.residualSumOfSquares = valueWithoutInterval(fit.converged ? fit.residualSumOfSquares : null, '', n);
  results.residualSd = valueWithoutInterval(fit.converged ? fit.residualSd : null, '', n);
  results.converged = valueWithoutInterval(fit.converged ? 1 : 0, '', n);
  return results;
}

function parameterRows(fit: CurveFit, level: number) {
  const t = fit.degreesOfFreedom > 0 ? studentTQuantile((1 + level) / 2, fit.degreesOfFreedom) : null;
  return fit.parameters.map((value, i) => {
    const standardError = fit.standardErrors[i]!;
    const reach = standardError === null || t === null ? null : t * standardError;
    return { parameter: `b${i + 1}`, value, standardError, low: reach === null ? null : value - reach, high: reach === null ? null : value + reach };
  });
}

function notesOf(fit: CurveFit, { formula }: NamedCurve): string[] {
  const notes = [`Curve: y = ${formula}.`];
  if (fit.degreesOfFreedom === 0) notes.push('As many parameters as points: there is nothing left to judge the spread by.');
  else if (fit.covariance === null) notes.push('These points cannot tell the parameters apart, so they have no standard errors.');
  return notes;
}

function figureOf(fit: CurveFit, name: string, { model, formula }: NamedCurve, x: number[], y: number[], level: number): Figure {
  const [from, to] = [Math.min(...x), Math.max(...x)];
  const grid = Array.from({ length: 101 }, (_, i) => from + ((to - from) * i) / 100);
  const band = grid.map((at) => ({ x: at, ...curveBand(fit, model, at, level) })).filter(({ value }) => Number.isFinite(value));
  const bounded = band.filter(({ low, high }) => low !== null && high !== null);
  return {
    id: 'fit',
    title: `Fit of ${name}`,
    finding: `y = ${formula} fitted to ${x.length} points.`,
    x: { title: 'x', scale: 'linear' },
    y: { title: 'y', scale: 'linear' },
    series: [
      { name: 'readings', kind: 'points', role: 'reading', points: x.map((at, i) => ({ x: at, y: y[i]! })) },
      { name: 'fit', kind: 'line', role: 'fit', points: band.map(({ x: at, value }) => ({ x: at, y: value })) },
    ],
    bands: [{ name: `${Number((level * 100).toPrecision(6))} % interval`, points: bounded.map(({ x: at, low, high }) => ({ x: at, low: low!, high: high! })) }],
  };
}
