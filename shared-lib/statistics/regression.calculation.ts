import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { fUpperTail, studentTQuantile, studentTUpperTail } from './distributions.ts';
import { fitLinear, predictLinear } from './linear-regression.ts';
import type { LinearFit } from './linear-regression.ts';
import { levelSchema } from './level.ts';
import { refuseAs } from './refuse-as.ts';

const input = z.strictObject({
  /** One predictor: a number per y. Several: a list of predictors per y (or, where lengths leave no doubt, a list per predictor). */
  x: z.union([z.array(z.number()).min(1).max(10_000), z.array(z.array(z.number()).min(1).max(10_000)).min(1).max(10_000)]),
  y: z.array(z.number()).min(1).max(10_000),
  intercept: z.boolean().default(true),
  weights: z.array(z.number().positive()).max(10_000).optional(),
  level: levelSchema,
});

export const regressionCalculation = defineCalculation({
  id: 'regression',
  version: '1',
  title: 'Linear regression by least squares',
  input,
  compute: ({ x, y, intercept, weights, level }) => {
    const columns = columnsOf(x, y.length);
    if (weights && weights.length !== y.length) throw new InputError('weights', weights.length, `weights needs one value per y: ${y.length}, not ${weights.length}.`);
    const fit = refuseAs('x', x.length, () => fitLinear(columns, y, { intercept, weights }));
    const n = y.length;
    const [sd, rSquared] = [fit.residualSd, fit.rSquared];
    return {
      results: {
        residualSd: valueWithoutInterval(sd, '', n),
        rSquared: valueWithoutInterval(rSquared, '', n),
        F: valueWithoutInterval(fit.f, '', n),
        pValue: valueWithoutInterval(fit.f === null ? null : fUpperTail(fit.f, fit.regressionDegreesOfFreedom, fit.degreesOfFreedom), '', n),
        ...coefficientResults(fit, n, level),
      },
      table: terms(fit, level),
      notes: notesOf(fit),
      figures: columns.length === 1 ? [figureOf(fit, columns[0]!, y, level)] : [],
    };
  },
  columns: [
    { key: 'term', title: 'Term' },
    { key: 'value', title: 'Coefficient' },
    { key: 'standardError', title: 'Standard error' },
    { key: 'low', title: 'Low' },
    { key: 'high', title: 'High' },
    { key: 't', title: 't', decimals: 2 },
    { key: 'p', title: 'p', decimals: 4 },
  ],
  cautions: [],
  sources: ['Householder QR of centred columns: G. H. Golub, C. F. Van Loan, Matrix Computations, 4th ed. (2013), 5.3'],
});

function columnsOf(x: number[] | number[][], count: number): number[][] {
  if (x.length === count) {
    const rows = (x as (number | number[])[]).map((row) => (typeof row === 'number' ? [row] : row));
    const width = rows[0]!.length;
    const odd = rows.findIndex((row) => row.length !== width);
    if (odd !== -1) throw new InputError(`x[${odd}]`, rows[odd], `x[${odd}] needs ${width} predictors like the first, not ${rows[odd]!.length}.`);
    return rows[0]!.map((_, j) => rows.map((row) => row[j]!));
  }
  if (x.every((column): column is number[] => Array.isArray(column) && column.length === count)) return x as number[][];
  throw new InputError('x', x.length, `x needs one entry per y: ${count}, not ${x.length}.`);
}

function terms(fit: LinearFit, level: number) {
  const t = fit.degreesOfFreedom > 0 ? studentTQuantile((1 + level) / 2, fit.degreesOfFreedom) : null;
  return fit.coefficients.map((value, i) => {
    const standardError = fit.standardErrors?.[i] ?? null;
    const reach = standardError === null || t === null ? null : t * standardError;
    const ratio = standardError ? value / standardError : null;
    return {
      term: fit.intercept && i === 0 ? 'intercept' : `x${fit.intercept ? i : i + 1}`,
      value,
      standardError,
      low: reach === null ? null : value - reach,
      high: reach === null ? null : value + reach,
      t: ratio,
      p: ratio === null ? null : 2 * studentTUpperTail(Math.abs(ratio), fit.degreesOfFreedom),
    };
  });
}

function coefficientResults(fit: LinearFit, n: number, level: number): Record<string, ResultValue> {
  return Object.fromEntries(
    terms(fit, level).map(({ term, value, low, high }) => [term, { value, unit: '', low, high, level: low === null ? null : level, n, bound: 'exact' as const }]),
  );
}

function notesOf(fit: LinearFit): string[] {
  const notes: string[] = [];
  if (!fit.intercept) notes.push('Without an intercept R² is taken about zero, not about the mean.');
  if (fit.degreesOfFreedom === 0) notes.push('As many coefficients as points: there is nothing left to judge the spread by.');
  else if (fit.residualSumOfSquares === 0) notes.push('The fit is exact, so F has no finite value.');
  return notes;
}

function figureOf(fit: LinearFit, x: number[], y: number[], level: number): Figure {
  const [from, to] = [Math.min(...x), Math.max(...x)];
  const line = Array.from({ length: 41 }, (_, i) => from + ((to - from) * i) / 40).map((at) => ({ x: at, ...predictLinear(fit, [at], level) }));
  const bounded = line.filter(({ low, high }) => low !== null && high !== null);
  return {
    id: 'regression',
    title: 'Linear regression',
    finding: `Straight line fitted to ${x.length} points.`,
    x: { title: 'x', scale: 'linear' },
    y: { title: 'y', scale: 'linear' },
    series: [
      { name: 'readings', kind: 'points', role: 'reading', points: x.map((at, i) => ({ x: at, y: y[i]! })) },
      { name: 'fit', kind: 'line', role: 'fit', points: line.map(({ x: at, value }) => ({ x: at, y: value })) },
    ],
    bands: [{ name: `${Number((level * 100).toPrecision(6))} % interval`, points: bounded.map(({ x: at, low, high }) => ({ x: at, low: low!, high: high! })) }],
  };
}
