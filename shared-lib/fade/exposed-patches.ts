import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { deltaE2000 } from '../colour/delta-e-2000.ts';
import { deltaEab } from '../colour/delta-e-ab.ts';
import type { Lab } from '../colour/lab.ts';
import { retentionFlags, startFlags } from './density-flags.ts';
import { fadeSeries } from './fade-series.ts';
import { deltaEF, greyScaleGrade } from './grey-scale-change.ts';
import { retentionPct } from './retention.ts';

export interface ExposureReading {
  series?: string | undefined;
  exposure: number;
  density?: number | undefined;
  lab?: Lab | undefined;
}

/** A reading set against the unexposed reading of its patch; `null` where density or colour was not read. */
export interface ExposedReading {
  series: string;
  exposure: number;
  density: number | null;
  retentionPct: number | null;
  deltaEab: number | null;
  deltaE00: number | null;
  deltaEF: number | null;
  greyScale: string | null;
}

/** A density that rose by half is another patch or a slip, not fading. */
const mostRetainedPct = 150;

/**
 * Compares each reading with the first of its patch, which must be at exposure 0. One list per patch.
 * @param paper density to subtract, 0 for densities read minus paper.
 * @throws InputError when a patch has no unexposed reading to compare with, its exposures fall, or a density is out of reach.
 */
export function exposedPatches(readings: readonly ExposureReading[], paper: number, flags: Flag[]): ExposedReading[][] {
  readings.forEach(({ density, lab }, index) => {
    if (density === undefined && lab === undefined) {
      throw new InputError(`readings[${index}].density`, null, 'Each exposure needs a density, a colour or both.');
    }
  });
  // The series are formed over the indices of the readings, so that each keeps its place in the input.
  const patches = fadeSeries(readings, readings.map((_, index) => index));
  return patches.map(({ name, values: indices }) => {
    const first = indices[0]!;
    const reference = readings[first]!;
    if (reference.exposure !== 0) {
      throw new InputError(`readings[${first}].exposure`, reference.exposure, `The first reading of a patch${name === '' ? '' : ` (${name})`} is its reference and must be at exposure 0.`);
    }
    if (reference.density !== undefined) flags.push(...startFlags(reference.density - paper, `readings[${first}]`));
    return indices.map((index) => compare(readings[index]!, index, reference, first, paper, flags));
  });
}

function compare(reading: ExposureReading, index: number, reference: ExposureReading, first: number, paper: number, flags: Flag[]): ExposedReading {
  const { exposure, series = '', density, lab } = reading;
  if (density !== undefined && reference.density === undefined) missing(`readings[${first}].density`, 'density');
  if (lab !== undefined && reference.lab === undefined) missing(`readings[${first}].lab`, 'colour');
  const left = density === undefined ? null : retained(reference.density!, density, paper, index, first);
  if (left !== null) flags.push(...retentionFlags(left, `readings[${index}]`));
  const change = lab === undefined ? null : deltaEF(reference.lab!, lab);
  return {
    series,
    exposure,
    density: density ?? null,
    retentionPct: left,
    deltaEab: lab === undefined ? null : deltaEab(reference.lab!, lab),
    deltaE00: lab === undefined ? null : deltaE2000(reference.lab!, lab),
    deltaEF: change,
    greyScale: change === null ? null : greyScaleGrade(change).text,
  };
}

function missing(field: string, what: string): never {
  throw new InputError(field, null, `The unexposed reading of this patch has no ${what} to compare with.`);
}

function retained(before: number, after: number, paper: number, index: number, first: number): number {
  if (before - paper <= 0) {
    throw new InputError(`readings[${first}].density`, before, `The unexposed density (${before}) must be more than that of the paper (${paper}); otherwise nothing can fade.`);
  }
  const left = retentionPct(before, after, paper);
  if (left > mostRetainedPct || left < -20) {
    throw new InputError(`readings[${index}].density`, after, `A density of ${after} after ${before} is ${left.toFixed(0)} % retained, which no fading gives; check the reading and its patch.`);
  }
  return left;
}
