import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import { inverseOfLine } from '../statistics/inverse-prediction.ts';
import { fitLinear } from '../statistics/linear-regression.ts';

/** Depth of cure = penetration depth · ln(dose/critical dose). */
export interface WorkingCurve {
  n: number;
  /** µm; depth by which the dose falls to 1/e. */
  penetrationDepth: ResultValue;
  /** mJ/cm²; below it nothing sets. */
  criticalDose: ResultValue;
  /** µm at a dose in mJ/cm². */
  depthAt: (dose: number) => number;
  /** mJ/cm² that cures to a depth in µm, on the mean line. */
  doseFor: (depthUm: number) => ResultValue;
}

/**
 * @param readings pairs of dose (mJ/cm², above 0) and cured depth (µm).
 * @returns `null` for fewer than two different doses or depths that do not rise with the dose.
 */
export function fitWorkingCurve(readings: readonly (readonly [number, number])[], level: number): WorkingCurve | null {
  if (new Set(readings.map(([dose]) => dose)).size < 2) return null;
  const fit = fitLinear([readings.map(([dose]) => Math.log(dose))], readings.map(([, depth]) => depth), { intercept: true });
  const [intercept, slope] = fit.coefficients as [number, number];
  if (!(slope > 0)) return null;
  const n = readings.length;
  const reach = fit.standardErrors === null ? null : fit.standardErrors[1]! * studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
  const doseFor = (depth: number): ResultValue => {
    const value = Math.exp((depth - intercept) / slope);
    const ends = inverseOfLine(fit, depth, level).fieller;
    if (ends === null) return valueWithoutInterval(value, 'mJ/cm²', n);
    const high = Math.exp(ends.high);
    return { value, unit: 'mJ/cm²', low: Math.exp(ends.low), high: Number.isFinite(high) ? high : null, level, n, bound: 'exact' };
  };
  return {
    n,
    penetrationDepth: reach === null ? valueWithoutInterval(slope, 'µm', n) : { value: slope, unit: 'µm', low: Math.max(0, slope - reach), high: slope + reach, level, n, bound: 'exact' },
    criticalDose: doseFor(0),
    depthAt: (dose) => intercept + slope * Math.log(dose),
    doseFor,
  };
}
