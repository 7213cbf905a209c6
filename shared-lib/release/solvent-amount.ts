import type { Flag, ResultValue } from '../calculation/result.ts';
import { inversePrediction } from '../statistics/inverse-prediction.ts';
import { refuseAs } from '../statistics/refuse-as.ts';
import { meanOf, squaresAbout } from '../statistics/summarise.ts';
import type { CalibrationLine } from './calibration-line.ts';
import type { DetectionLimits } from './detection-limits.ts';
import { halfWidthOfSum, type Variance } from './interval-of-sum.ts';

const UNIT = 'mg/m²';

/** One solvent in one piece of print. */
export interface SpecimenAmount {
  /** mg/m²; where `below`, the amount that it is at most. */
  perSquareMetre: number;
  below: boolean;
  /** In the vial, in the unit of the standards. */
  amount: number;
}

/** One solvent in the print. */
export interface SolventAmount {
  name: string;
  /** In the order given. */
  specimens: SpecimenAmount[];
  result: ResultValue;
  /** Scatter in (mg/m²)² that does not show in the differences between specimens: of the calibration; with one specimen all there is. */
  variances: Variance[];
}

interface Specimen {
  areas: readonly number[];
  areaM2: number;
}

/** How the amounts are read off a line. */
export interface Reading {
  line: CalibrationLine;
  limits: DetectionLimits | null;
  /** Milligrams in one unit of the standards' amounts. */
  milligrams: number;
  level: number;
}

/**
 * Reads the specimens off the calibration line. One specimen has the interval of inverse prediction (Fieller), several the
 * scatter between them together with that of the line, which they share. What lies below the detection limit is a bound.
 * @param where the field that names the specimens
 * @param flags takes: beyond the standards, below the least of them, below the quantification limit
 */
export function solventAmount(name: string, specimens: readonly Specimen[], reading: Reading, where: string, flags: Flag[]): SolventAmount {
  const { line, limits, milligrams, level } = reading;
  const floor = limits?.detection ?? line.lowest;
  const found = specimens.map(({ areas, areaM2 }, index) => {
    const at = `${where}[${index}]`;
    const read = refuseAs(`${at}.areas`, areas, () => inversePrediction(line.fit, areas, level, line.weightAt));
    flags.push(...rangeFlags(name, read.x, reading, at));
    return { ...read, perUnit: milligrams / areaM2, below: read.x < floor };
  });
  const amounts = found.map(({ x, perUnit, below }): SpecimenAmount => ({ perSquareMetre: (below ? floor : x) * perUnit, below, amount: x }));
  if (amounts.some(({ below }) => below)) return { name, specimens: amounts, result: bounded(amounts), variances: [] };

  const values = amounts.map(({ perSquareMetre }) => perSquareMetre);
  const value = meanOf(values);
  const none: ResultValue = { value, unit: UNIT, low: null, high: null, level: null, n: values.length, bound: 'exact' };
  if (found.length === 1) {
    const { fieller, standardError, perUnit } = found[0]!;
    const variances = line.scatters && standardError !== null ? [{ variance: (standardError * perUnit) ** 2, degreesOfFreedom: line.fit.degreesOfFreedom }] : [];
    if (!line.scatters || fieller === null) return { name, specimens: amounts, result: none, variances };
    return { name, specimens: amounts, result: { ...none, low: Math.max(0, fieller.low * perUnit), high: fieller.high * perUnit, level }, variances };
  }
  const variances = line.scatters ? [ofTheLine(line, found)] : [];
  const reach = halfWidthOfSum([...variances, betweenSpecimens(values)], level);
  return { name, specimens: amounts, result: reach === null ? none : { ...none, low: Math.max(0, value - reach), high: value + reach, level }, variances };
}

/** Of the mean over the specimens, as far as they scatter among each other. */
export function betweenSpecimens(values: readonly number[]): Variance {
  const degreesOfFreedom = values.length - 1;
  return { variance: squaresAbout(values, meanOf(values)) / degreesOfFreedom / values.length, degreesOfFreedom };
}

/** Of the mean over specimens read off one line, for the sake of the line: x = (y − a)/b, so ∂x/∂a = −1/b and ∂x/∂b = −x/b. */
function ofTheLine({ fit, slope }: CalibrationLine, found: readonly { x: number; perUnit: number }[]): Variance {
  const [[vaa, vab], [, vbb]] = fit.covariance as [[number, number], [number, number]];
  const byIntercept = meanOf(found.map(({ perUnit }) => perUnit));
  const bySlope = meanOf(found.map(({ x, perUnit }) => x * perUnit));
  return { variance: Math.max(0, byIntercept ** 2 * vaa + 2 * byIntercept * bySlope * vab + bySlope ** 2 * vbb) / slope ** 2, degreesOfFreedom: fit.degreesOfFreedom };
}

/** All below: at most the mean of the bounds. Some below: each of those lies anywhere from nothing to its bound. */
function bounded(amounts: readonly SpecimenAmount[]): ResultValue {
  const high = meanOf(amounts.map(({ perSquareMetre }) => perSquareMetre));
  const base = { unit: UNIT, level: null, n: amounts.length };
  if (amounts.every(({ below }) => below)) return { ...base, value: high, low: null, high: null, bound: 'at-most' };
  const low = meanOf(amounts.map(({ perSquareMetre, below }) => (below ? 0 : perSquareMetre)));
  return { ...base, value: (low + high) / 2, low, high, bound: 'between' };
}

function rangeFlags(name: string, amount: number, { line, limits }: Reading, where: string): Flag[] {
  const of = name === '' ? 'This specimen' : `The ${name} in this specimen`;
  if (amount > line.highest) {
    return [{ code: 'outside-calibration', where, text: `${of} lies beyond the largest standard (${shown(amount)} against ${shown(line.highest)}): extrapolated. Take a smaller piece, or calibrate higher.` }];
  }
  if (limits === null || amount < limits.detection) return [];
  const flags: Flag[] = [];
  if (amount < limits.quantification) flags.push({ code: 'below-quantification', where, text: `${of} is found, but lies below the quantification limit; the figure is rough.` });
  if (amount < line.lowest) flags.push({ code: 'below-lowest-standard', where, text: `${of} lies below the least standard (${shown(amount)} against ${shown(line.lowest)}): extrapolated.` });
  return flags;
}

function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}
