import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import { fitLinear } from '../statistics/linear-regression.ts';
import type { RunPlaces } from './drift-figure.ts';

/** How a rate over a run is given: per 1000 m, 1000 prints or hour. */
export const runUnits = { m: { per: 1000, unit: 'per 1000 m' }, min: { per: 60, unit: 'per h' }, prints: { per: 1000, unit: 'per 1000 prints' } } as const;
export type RunUnit = keyof typeof runUnits;

/** Rise of a straight line through the readings over the run, with its t interval; no value for fewer than three or at one place. */
export function driftRate(values: readonly number[], { at, unit }: RunPlaces & { unit: RunUnit }, level: number): ResultValue {
  const { per, unit: name } = runUnits[unit];
  if (values.length < 3 || new Set(at).size < 2) return valueWithoutInterval(null, name, values.length);
  const fit = fitLinear([at], values, { intercept: true });
  const value = fit.coefficients[1]! * per;
  if (fit.standardErrors === null) return valueWithoutInterval(value, name, values.length);
  const half = studentTQuantile(1 - (1 - level) / 2, fit.degreesOfFreedom) * fit.standardErrors[1]! * per;
  return { value, unit: name, low: value - half, high: value + half, level, n: values.length, bound: 'exact' };
}
