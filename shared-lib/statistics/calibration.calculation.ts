import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { studentTQuantile } from './distributions.ts';
import { inversePrediction } from './inverse-prediction.ts';
import type { InversePrediction } from './inverse-prediction.ts';
import { levelSchema } from './level.ts';
import { fitLinear, predictLinear } from './linear-regression.ts';
import type { LinearFit } from './linear-regression.ts';
import { refuseAs } from './refuse-as.ts';
import { meanOf } from './summarise.ts';

const input = z.strictObject({
  x: z.array(z.number()).min(3).max(5000),
  y: z.array(z.number()).min(3).max(5000),
  /** Readings of each unknown. */
  unknown: z.array(z.array(z.number()).min(1).max(1000)).max(1000).default([]),
  /** Weight of each squared residual: `1/x` or `1/x2` where scatter grows with x. */
  weighting: z.enum(['none', '1/x', '1/x2']).default('none'),
  unitX: z.string().max(20).default(''),
  unitY: z.string().max(20).default(''),
  level: levelSchema,
});

/** `table`: a row per unknown with Fieller's interval as low and high, and beside it the symmetric one of the delta method. */
export const calibrationCalculation = defineCalculation({
  id: 'calibration',
  version: '1',
  title: 'Calibration line and what is read off it',
  input,
  compute: ({ x, y, unknown, weighting, unitX, unitY, level }) => {
    if (x.length !== y.length) throw new InputError('y', y.length, `y needs one value per x: ${x.length}, not ${y.length}.`);
    const weightAt = weightRule(weighting);
    const odd = weighting === 'none' ? -1 : x.findIndex((value) => value <= 0);
    if (odd !== -1) throw new InputError(`x[${odd}]`, x[odd], `x[${odd}] must be more than 0 for weighting ${weighting}, not ${x[odd]}.`);
    const fit = refuseAs('x', x, () => fitLinear([x], y, { intercept: true, ...(weighting !== 'none' && { weights: x.map(weightAt) }) }));
    const read = unknown.map((readings, u) => refuseAs(`unknown[${u}]`, readings, () => inversePrediction(fit, readings, level, weightAt)));
    // A weight is not defined where the line reads off an x of zero or below.
    const usable = read.map((found) => (weighting === 'none' || found.x > 0 ? found : { ...found, standardError: null, delta: null, fieller: null }));
    const coefficient = (i: number, unit: string): ResultValue => {
      const value = fit.coefficients[i]!;
      const reach = fit.standardErrors && fit.degreesOfFreedom > 0 ? studentTQuantile((1 + level) / 2, fit.degreesOfFreedom) * fit.standardErrors[i]! : null;
      return { value, unit, low: reach === null ? null : value - reach, high: reach === null ? null : value + reach, level: reach === null ? null : level, n: x.length, bound: 'exact' };
    };
    return {
      results: {
        slope: coefficient(1, unitY || unitX ? `${unitY || '1'}/${unitX || '1'}` : ''),
        intercept: coefficient(0, unitY),
        residualSd: valueWithoutInterval(fit.residualSd, unitY, x.length),
        rSquared: valueWithoutInterval(fit.rSquared, '', x.length),
      },
      table: usable.map(({ x: value, standardError, delta, fieller }, u) => ({
        unknown: u + 1,
        readings: unknown[u]!.length,
        x: value,
        low: fieller?.low ?? null,
        high: fieller?.high ?? null,
        standardError,
        deltaLow: delta?.low ?? null,
        deltaHigh: delta?.high ?? null,
      })),
      flags: usable.flatMap((found, u) => flagsOf(found, u, Math.min(...x), Math.max(...x))),
      notes: ['Limits are those of Fieller; the symmetric ones of the delta method stand beside them and agree where the slope is sure.', 'Readings of an unknown are taken to scatter as the calibration readings do.'],
      figures: [figureOf(fit, x, y, usable, unknown, { unitX, unitY, level })],
    };
  },
  columns: [
    { key: 'unknown', title: 'Unknown', decimals: 0 },
    { key: 'readings', title: 'Readings', decimals: 0 },
    { key: 'x', title: 'x' },
    { key: 'low', title: 'Low' },
    { key: 'high', title: 'High' },
    { key: 'standardError', title: 'Standard error' },
    { key: 'deltaLow', title: 'Low, delta' },
    { key: 'deltaHigh', title: 'High, delta' },
  ],
  cautions: [],
  sources: ['Inverse prediction: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175; J. C. Miller, J. N. Miller, Statistics for Analytical Chemistry, 3rd ed. (1993), 5.6'],
});

function weightRule(weighting: 'none' | '1/x' | '1/x2'): (x: number) => number {
  if (weighting === 'none') return () => 1;
  return weighting === '1/x' ? (x) => 1 / x : (x) => 1 / (x * x);
}

function flagsOf({ x, fieller, standardError }: InversePrediction, u: number, from: number, to: number): Flag[] {
  const where = `unknown[${u}]`;
  const flags: Flag[] = [];
  if (x < from || x > to) flags.push({ code: 'outside-calibration', where, text: `Unknown ${u + 1} lies outside the calibrated range ${from} to ${to}; the line is not known to hold there.` });
  if (standardError === null) flags.push({ code: 'no-interval', where, text: `Unknown ${u + 1} reads at zero or below, where this weighting gives no scatter; no interval can be given.` });
  else if (fieller === null) flags.push({ code: 'slope-unsure', where, text: `The slope is too unsure for a bounded interval of unknown ${u + 1}; more calibration points, or a wider range, are needed.` });
  return flags;
}

function figureOf(fit: LinearFit, x: number[], y: number[], read: InversePrediction[], unknown: number[][], { unitX, unitY, level }: { unitX: string; unitY: string; level: number }): Figure {
  const [from, to] = [Math.min(...x, ...read.map((found) => found.x)), Math.max(...x, ...read.map((found) => found.x))];
  const line = Array.from({ length: 41 }, (_, i) => from + ((to - from) * i) / 40).map((at) => ({ x: at, ...predictLinear(fit, [at], level) }));
  return {
    id: 'calibration',
    title: 'Calibration line',
    finding: `Straight line through ${x.length} calibration points${read.length > 0 ? `, with ${read.length} unknown${read.length > 1 ? 's' : ''} read off it` : ''}.`,
    x: { title: 'x', ...(unitX && { unit: unitX }), scale: 'linear' },
    y: { title: 'y', ...(unitY && { unit: unitY }), scale: 'linear' },
    series: [
      { name: 'calibration', kind: 'points', role: 'reading', points: x.map((at, i) => ({ x: at, y: y[i]! })) },
      { name: 'line', kind: 'line', role: 'fit', points: line.map(({ x: at, value }) => ({ x: at, y: value })) },
      ...(read.length > 0 ? [{ name: 'unknowns', kind: 'points' as const, role: 'reading' as const, points: read.map((found, u) => ({ x: found.x, y: meanOf(unknown[u]!), label: `unknown ${u + 1}` })) }] : []),
    ],
    bands: [{ name: `${Number((level * 100).toPrecision(6))} % interval`, points: line.filter(({ low, high }) => low !== null && high !== null).map(({ x: at, low, high }) => ({ x: at, low: low!, high: high! })) }],
  };
}
