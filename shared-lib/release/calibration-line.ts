import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { studentTUpperTail } from '../statistics/distributions.ts';
import { fitLinear, type LinearFit } from '../statistics/linear-regression.ts';
import { refuseAs } from '../statistics/refuse-as.ts';
import { meanOf } from '../statistics/summarise.ts';

export interface CalibrationPoint {
  /** Of the solvent in the vial. */
  amount: number;
  /** Peak area, in counts of the detector. */
  area: number;
}

/** The external calibration of one solvent: area = intercept + slope·amount. */
export interface CalibrationLine {
  fit: LinearFit;
  slope: number;
  /** Weight of a squared residual at an amount. */
  weightAt: (amount: number) => number;
  /** Least standard above 0, and the largest. */
  lowest: number;
  highest: number;
  /** The standards scatter about the line, so that an interval can be given. */
  scatters: boolean;
}

/** Below this probability a bend of the line is taken for real. */
const BENT = 0.01;

/**
 * Fits the line and looks whether it deserves the name.
 * @param where the field that names the standards, e.g. `solvents[1].calibration`
 * @param flags takes: too few levels to show a straight line, areas that fall as the amount grows, a bend
 * @throws InputError for one level, weights at an amount of 0, or areas that do not grow with the amount
 */
export function calibrationLine(points: readonly CalibrationPoint[], weighting: 'none' | '1/x', where: string, flags: Flag[]): CalibrationLine {
  const amounts = points.map(({ amount }) => amount);
  const areas = points.map(({ area }) => area);
  const atNothing = weighting === '1/x' ? amounts.indexOf(0) : -1;
  if (atNothing !== -1) {
    throw new InputError(`${where}[${atNothing}].amount`, 0, 'A standard without solvent cannot be weighted by 1/amount; leave it out, or take no weights.');
  }
  const weightAt = weighting === 'none' ? () => 1 : (amount: number) => 1 / amount;
  const levels = levelMeans(points);
  if (levels.length < 2) throw new InputError(where, amounts[0], 'The standards need at least two different amounts, better five or more.');
  const fit = refuseAs(where, amounts, () => fitLinear([amounts], areas, { intercept: true, weights: amounts.map(weightAt) }));
  const slope = fit.coefficients[1]!;
  if (!(slope > 0)) throw new InputError(where, slope, 'The areas do not grow with the amount; check which area belongs to which standard.');
  const line: CalibrationLine = { fit, slope, weightAt, lowest: Math.min(...amounts.filter((amount) => amount > 0)), highest: Math.max(...amounts), scatters: !!fit.residualSd };
  flags.push(...lineFlags(levels, where), ...bendFlags(amounts, areas, line, levels.length, where));
  return line;
}

function levelMeans(points: readonly CalibrationPoint[]): { amount: number; area: number }[] {
  const amounts = [...new Set(points.map(({ amount }) => amount))].sort((a, b) => a - b);
  return amounts.map((amount) => ({ amount, area: meanOf(points.filter((point) => point.amount === amount).map(({ area }) => area)) }));
}

function lineFlags(levels: { amount: number; area: number }[], where: string): Flag[] {
  const flags: Flag[] = [];
  if (levels.length === 2) {
    flags.push({ code: 'two-point-calibration', where, text: 'Two amounts always lie on a line: they cannot show whether the detector answers straight. Use five or more.' });
  }
  const fall = levels.findIndex((level, index) => index > 0 && level.area <= levels[index - 1]!.area);
  if (fall !== -1) {
    const [before, after] = [levels[fall - 1]!, levels[fall]!];
    flags.push({ code: 'calibration-not-monotone', where, text: `The area does not grow from the standard of ${before.amount} (${round(before.area)}) to that of ${after.amount} (${round(after.area)}); check the two, or an overloaded detector.` });
  }
  return flags;
}

/** Whether a parabola fits better than chance would have it. */
function bendFlags(amounts: number[], areas: number[], line: CalibrationLine, levels: number, where: string): Flag[] {
  if (levels < 4 || !line.scatters) return [];
  const middle = meanOf(amounts);
  const parabola = fitLinear([amounts, amounts.map((amount) => (amount - middle) ** 2)], areas, { intercept: true, weights: amounts.map(line.weightAt) });
  const error = parabola.standardErrors?.[2];
  if (error === undefined) return [];
  const p = error === 0 ? 0 : 2 * studentTUpperTail(Math.abs(parabola.coefficients[2]! / error), parabola.degreesOfFreedom);
  if (p >= BENT) return [];
  return [{ code: 'calibration-bent', where, text: 'The standards lie on a bend rather than on a line; calibrate over a narrower range around the specimens.' }];
}

function round(value: number): string {
  return String(Number(value.toPrecision(5)));
}
