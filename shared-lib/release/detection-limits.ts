import { InputError } from '../calculation/input-error.ts';
import { summarise } from '../statistics/summarise.ts';
import type { CalibrationLine } from './calibration-line.ts';

export const sigmaChoices = ['residual', 'intercept', 'blanks'] as const;

/** Whose scatter counts: of the standards about the line, of its intercept, or of blank injections. */
export type SigmaOf = (typeof sigmaChoices)[number];

/** In the unit of the calibrated amounts. */
export interface DetectionLimits {
  detection: number;
  quantification: number;
}

/**
 * Detection and quantification limit 3.3·σ/S and 10·σ/S, S the slope of the line. With weights the scatter of the
 * standards is that at the least of them, which is nearest to the limit.
 * Source: ICH Q2(R1), 6.3 and 7.3.
 * @returns `null` where nothing scatters: no replicate, or standards exactly on the line
 * @throws InputError for fewer than two blanks where their scatter is asked for
 */
export function detectionLimits(line: CalibrationLine, sigmaOf: SigmaOf, blanks: readonly number[], where: string): DetectionLimits | null {
  const sigma = sigmaOf === 'blanks' ? scatterOfBlanks(blanks, where) : scatterOfLine(line, sigmaOf);
  return sigma ? { detection: (3.3 * sigma) / line.slope, quantification: (10 * sigma) / line.slope } : null;
}

function scatterOfLine({ fit, weightAt, lowest }: CalibrationLine, sigmaOf: 'residual' | 'intercept'): number | null {
  if (sigmaOf === 'intercept') return fit.standardErrors?.[0] ?? null;
  return fit.residualSd === null ? null : fit.residualSd / Math.sqrt(weightAt(lowest));
}

function scatterOfBlanks(blanks: readonly number[], where: string): number | null {
  if (blanks.length < 2) throw new InputError(where, blanks.length, 'The scatter of blanks needs at least two blank injections, better ten.');
  return summarise(blanks).standardDeviation;
}
