import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Field } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';

/** What the densities of a sheet are read with and whether the paper is in them. */
export const densityBasisField: Field = {
  kind: 'choice',
  key: 'densityBasis',
  label: 'Densities are',
  choices: [
    { value: 'minus-paper', label: 'minus film or paper', shortcut: 'm' },
    { value: 'absolute', label: 'absolute', shortcut: 'a' },
  ],
  default: 'minus-paper',
  required: true,
};

export const densityStatusField: Field = {
  kind: 'choice',
  key: 'status',
  label: 'Status',
  choices: [
    { value: 'E', label: 'E', shortcut: 'e' },
    { value: 'T', label: 'T', shortcut: 't' },
    { value: 'A', label: 'A', shortcut: 'a' },
    { value: 'visual', label: 'visual', shortcut: 'v' },
  ],
  default: 'E',
  required: true,
};

export const paperDensityField: Field = {
  kind: 'number',
  key: 'paperDensity',
  label: 'Density of the unprinted film',
  min: 0,
  max: 4,
  usual: { min: 0, max: 0.5 },
  hint: 'With absolute densities only; over the same backing.',
};

/** Kept with the readings. */
export const backingField: Field = { kind: 'text', key: 'backing', label: 'Backing', maxLength: 100, hint: 'black, white or own pile; the same for all readings' };

/**
 * The density to subtract: 0 for readings minus paper.
 * @throws InputError when it does not fit what is said of the readings.
 */
export function paperDensityOf(bench: BenchReadings): number {
  const paper = numberIn(bench.conditions, 'paperDensity');
  if (textIn(bench.conditions, 'densityBasis') === 'absolute') {
    if (paper === undefined) throw new InputError('conditions.paperDensity', null, 'Absolute densities need the density of the unprinted film, read over the same backing.');
    return paper;
  }
  if (paper !== undefined && paper !== 0) throw new InputError('conditions.paperDensity', paper, 'Densities read minus film take no density of the film; it would be subtracted twice.');
  return 0;
}
