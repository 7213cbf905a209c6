import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { studentTUpperTail } from '../statistics/distributions.ts';
import { fitLinear } from '../statistics/linear-regression.ts';
import type { Variance } from './interval-of-sum.ts';

/** Areas of one vial that is extracted again and again: Aᵢ = A₁·Qⁱ⁻¹, in all A₁/(1 − Q). */
export interface HeadspaceSeries {
  /** First area by the fitted line, not as measured. */
  first: number;
  /** What each step leaves of the area. */
  quotient: number;
  total: number;
  /** Of the logarithm of the total; `null` for two steps. */
  logVariance: Variance | null;
}

/** Departure from the straight line of ln A, as a share of the area: flagged, and refused (common practice). */
const DEPARTS = 0.03;
const DEPARTS_TOO_FAR = 0.1;
/** A bend that is sure (1 %) and larger than this is refused: the sum runs out into steps nobody has measured. */
const SURE_BEND = 0.02;

/**
 * @param areas in the order of extraction, two or more
 * @throws InputError when an area is 0, the areas do not fall, or their logarithms bend
 */
export function headspaceSeries(areas: readonly number[], where: string, flags: Flag[]): HeadspaceSeries {
  const gone = areas.findIndex((area) => !(area > 0));
  if (gone !== -1) throw new InputError(`${where}[${gone}]`, areas[gone], 'An extraction step without a peak has no logarithm; leave out the steps from there on.');
  const steps = areas.map((_, index) => index);
  const logarithms = areas.map((area) => Math.log(area));
  const { coefficients, covariance, degreesOfFreedom } = fitLinear([steps], logarithms, { intercept: true });
  const [start, slope] = coefficients as [number, number];
  const quotient = Math.exp(slope);
  if (quotient >= 1) throw new InputError(where, quotient, 'The areas do not fall from step to step, so they do not add up to an end; check that all are from one vial, in the order of extraction.');
  const departures = logarithms.map((value, step) => Math.abs(Math.expm1(value - (start + slope * step))));
  const worst = Math.max(...departures);
  if (worst > DEPARTS_TOO_FAR || (worst > SURE_BEND && isBent(steps, logarithms))) {
    throw new InputError(where, null, `ln area against step is no straight line (off by ${(100 * worst).toFixed(0)} %): the vial was not at equilibrium, leaked, or the film holds the solvent back. Extract longer or hotter, or take fewer steps.`);
  }
  if (worst > DEPARTS) {
    flags.push({ code: 'extraction-scatters', where, text: `An area lies ${(100 * worst).toFixed(0)} % off the straight line of ln area against step.` });
  }
  const pull = quotient / (1 - quotient);
  return {
    first: Math.exp(start),
    quotient,
    total: Math.exp(start) / (1 - quotient),
    logVariance: covariance && { variance: covariance[0]![0]! + 2 * pull * covariance[0]![1]! + pull ** 2 * covariance[1]![1]!, degreesOfFreedom },
  };
}

function isBent(steps: number[], logarithms: number[]): boolean {
  if (steps.length < 4) return false;
  const { coefficients, standardErrors, degreesOfFreedom } = fitLinear([steps, steps.map((step) => step * step)], logarithms, { intercept: true });
  const error = standardErrors![2]!;
  return error === 0 || 2 * studentTUpperTail(Math.abs(coefficients[2]! / error), degreesOfFreedom) < 0.01;
}
