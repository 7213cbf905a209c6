import { studentTQuantile } from './distributions.ts';
import type { LinearFit } from './linear-regression.ts';
import { meanOf } from './summarise.ts';

export interface InversePrediction {
  x: number;
  standardError: number | null;
  /** By the delta method: symmetric about x. */
  delta: { low: number; high: number } | null;
  /** Fieller's interval, exact for normal errors; `null` where the slope is too unsure for a bounded one. */
  fieller: { low: number; high: number } | null;
  /** t²·Var(slope)/slope²: the nearer to 1, the less sure the slope. */
  g: number | null;
}

/**
 * The x of an unknown from its readings y by a straight calibration line with intercept.
 * @param weightAt weight of a reading at x, in the weights of the fit; 1 for an unweighted one.
 * @throws RangeError without readings or for a line without slope.
 * Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175; J. C. Miller, J. N. Miller, Statistics for Analytical
 * Chemistry, 3rd ed. (1993), 5.6.
 */
export function inversePrediction(fit: LinearFit, readings: readonly number[], level = 0.95, weightAt: (x: number) => number = () => 1): InversePrediction {
  if (readings.length === 0) throw new RangeError('An unknown needs at least one reading.');
  return readOff(fit, meanOf(readings), level, (x, residualSd) => residualSd ** 2 / (weightAt(x) * readings.length));
}

/**
 * The x at which the line itself comes to `y`: only the line is unsure, no reading of an unknown adds its scatter.
 * @throws RangeError for a line without slope.
 * Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175.
 */
export function inverseOfLine(fit: LinearFit, y: number, level = 0.95): InversePrediction {
  return readOff(fit, y, level, () => 0);
}

/** @param ownVariance what the unknown's own reading adds at x */
function readOff(fit: LinearFit, y: number, level: number, ownVariance: (x: number, residualSd: number) => number): InversePrediction {
  const [intercept, slope] = [fit.coefficients[0]!, fit.coefficients[1]!];
  const x = (y - intercept) / slope;
  if (!Number.isFinite(x)) throw new RangeError('The calibration line has no slope, so nothing can be read off it.');
  if (fit.covariance === null || fit.residualSd === null) return { x, standardError: null, delta: null, fieller: null, g: null };
  const [[vaa, vab], [, vbb]] = fit.covariance as [[number, number], [number, number]];
  const own = ownVariance(x, fit.residualSd);
  const variance = own + vaa + 2 * x * vab + x * x * vbb;
  const standardError = Math.sqrt(Math.max(0, variance)) / Math.abs(slope);
  const t = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
  const reach = t * standardError;
  return { x, standardError, delta: { low: x - reach, high: x + reach }, fieller: fieller(y - intercept, slope, t * t, own + vaa, vab, vbb), g: (t * t * vbb) / (slope * slope) };
}

/** Roots of (d − b·x)² = t²·Var(d − b·x). */
function fieller(d: number, b: number, t2: number, vdd: number, vab: number, vbb: number): { low: number; high: number } | null {
  const a = b * b - t2 * vbb;
  const half = b * d + t2 * vab;
  const c = d * d - t2 * vdd;
  if (!(a > 0)) return null;
  // d/b itself always lies between the roots: below 0 is rounding, of readings on a line.
  const root = Math.sqrt(Math.max(0, half * half - a * c));
  return { low: (half - root) / a, high: (half + root) / a };
}
