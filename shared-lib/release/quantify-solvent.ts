import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import { meanOf } from '../statistics/summarise.ts';
import { calibrationLine, type CalibrationLine } from './calibration-line.ts';
import { detectionLimits } from './detection-limits.ts';
import { headspaceAmount } from './headspace-amount.ts';
import { calibrationFigure, headspaceFigure } from './residual-solvent-figures.ts';
import { milligramsPer, type ResidualSolventInput, type SolventInput } from './residual-solvent-input.ts';
import { solventAmount, type SolventAmount } from './solvent-amount.ts';

/** One solvent worked out. */
export interface QuantifiedSolvent {
  name: string;
  limitMgM2: number | undefined;
  /** `null` where the area of the print is not known: the mass alone is. */
  found: SolventAmount | null;
  /** Of this solvent; on its own they are the results of the calculation. */
  results: Record<string, ResultValue>;
  notes: string[];
  figure: Figure;
}

type Settings = Pick<ResidualSolventInput, 'amountUnit' | 'weighting' | 'sigma' | 'level'>;

/** @throws InputError naming the field of the solvent at fault */
export function quantifySolvent(solvent: SolventInput, index: number, settings: Settings, flags: Flag[]): QuantifiedSolvent {
  const own: Flag[] = [];
  const quantified = solvent.headspace ? byHeadspace(solvent, index, settings, own) : byCalibration(solvent, index, settings, own);
  flags.push(...own.map((flag) => (flag.text.includes(solvent.name) ? flag : { ...flag, text: `Solvent ${solvent.name}: ${flag.text}` })));
  return quantified;
}

function byCalibration({ name, path, limitMgM2, calibration, specimens, blanks = [] }: SolventInput, index: number, settings: Settings, flags: Flag[]): QuantifiedSolvent {
  const { amountUnit, weighting, sigma, level } = settings;
  const points = calibration!;
  if (!specimens) throw new InputError(`${path}specimens`, null, `${name || 'The solvent'} has standards but no specimen.`);
  const read = specimens.map(({ areas, areaM2 }, place) => {
    if (!areas) throw new InputError(`${path}specimens[${place}].areas`, null, 'A specimen needs its peak area; 0 where the solvent gave no peak.');
    return { areas, areaM2 };
  });
  const line = calibrationLine(points, weighting, `${path}calibration`, flags);
  const limits = detectionLimits(line, sigma, blanks, `${path}blanks`);
  const milligrams = milligramsPer[amountUnit];
  const found = solventAmount(name, read, { line, limits, milligrams, level }, `${path}specimens`, flags);
  const least = Math.min(...read.map(({ areaM2 }) => areaM2));
  const unit = amountUnit === 'ug' ? 'µg' : amountUnit;
  const perArea = (amount: number | null) => valueWithoutInterval(amount === null ? null : (amount * milligrams) / least, 'mg/m²', points.length);
  flags.push(...limitFlags(name, limitMgM2, perArea(limits?.detection ?? null).value, path));
  return {
    name,
    limitMgM2,
    found,
    results: {
      perSquareMetre: found.result,
      detectionLimit: valueWithoutInterval(limits?.detection ?? null, unit, points.length),
      quantificationLimit: valueWithoutInterval(limits?.quantification ?? null, unit, points.length),
      detectionLimitPerSquareMetre: perArea(limits?.detection ?? null),
      quantificationLimitPerSquareMetre: perArea(limits?.quantification ?? null),
      slope: coefficient(line, 1, `1/${unit}`, points.length, level),
      intercept: coefficient(line, 0, '', points.length, level),
      residualSd: valueWithoutInterval(line.fit.residualSd, '', points.length),
    },
    notes: limits ? [] : [noLimits(name, line)],
    figure: calibrationFigure(index, name, points, line, read.map(({ areas }, place) => ({ amount: found.specimens[place]!.amount, area: meanOf(areas) })), unit, level),
  };
}

function byHeadspace({ name, path, limitMgM2, headspace, specimens }: SolventInput, index: number, { level }: Settings, flags: Flag[]): QuantifiedSolvent {
  const { areaM2, ...series } = headspace!;
  if (specimens && specimens.length > 1) {
    throw new InputError(`${path}specimens`, specimens.length, 'A multiple headspace extraction takes one specimen; give each its own.');
  }
  const { mass, quotients, perSquareMetre } = headspaceAmount(name, series, areaM2 ?? specimens?.[0]?.areaM2, level, `${path}headspace`, flags);
  const steps = series.sampleAreas.length;
  return {
    name,
    limitMgM2,
    found: perSquareMetre,
    results: {
      perSquareMetre: perSquareMetre?.result ?? valueWithoutInterval(null, 'mg/m²', 0),
      amountUg: mass,
      quotient: valueWithoutInterval(quotients.sample, '', steps),
      standardQuotient: valueWithoutInterval(quotients.standard, '', series.standardAreas.length),
    },
    notes: [
      `${name || 'The solvent'}: by multiple headspace extraction, Q ${quotients.sample.toFixed(4)} (standard ${quotients.standard.toFixed(4)}); the first areas are those of the fitted lines.`,
      ...(mass.level === null ? ['Two steps, or steps without scatter, give no interval.'] : []),
      ...(perSquareMetre ? [] : ['No mg/m²: the area of the specimen (areaM2) is not given.']),
    ],
    figure: headspaceFigure(index, name, series),
  };
}

function coefficient({ fit, scatters }: CalibrationLine, which: 0 | 1, unit: string, n: number, level: number): ResultValue {
  const value = fit.coefficients[which]!;
  if (!scatters) return valueWithoutInterval(value, unit, n);
  const reach = studentTQuantile((1 + level) / 2, fit.degreesOfFreedom) * fit.standardErrors![which]!;
  return { value, unit, low: value - reach, high: value + reach, level, n, bound: 'exact' };
}

function limitFlags(name: string, limit: number | undefined, detection: number | null, path: string): Flag[] {
  if (limit === undefined || detection === null || detection <= limit) return [];
  return [{ code: 'limit-below-detection', where: `${path}limitMgM2`, text: `${name ? `The ${name}` : 'The solvent'} cannot be detected at its limit of ${limit} mg/m² (detection limit ${Number(detection.toPrecision(3))} mg/m²): take a larger piece or a finer calibration.` }];
}

function noLimits(name: string, line: CalibrationLine): string {
  const of = name === '' ? '' : ` for ${name}`;
  const why = line.fit.residualSd === null ? 'two standards leave no scatter to judge by' : 'the standards, or the blanks, do not scatter at all';
  return `No detection limit and no interval of the line${of}: ${why}. What reads below the least standard counts as at most that.`;
}

