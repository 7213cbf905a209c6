import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { spectrumOf, spectrumText } from '../../shared-lib/colour/spectrum-text.ts';
import { typedSpectrum } from '../../shared-lib/colour/typed-spectrum.ts';
import type { CellValue, ChoiceField, Field, ItemField, NumberField, TextField } from '../../shared-lib/method/method.ts';
import { isIsoDate } from '../../shared-lib/quantity/iso-date.ts';
import { readInUnit } from '../../shared-lib/quantity/read-in-unit.ts';
import { withUnit } from './with-unit.ts';

/**
 * What stands in a cell → its value; an empty cell is `null`.
 * @param where the input field that a problem is put down to
 * @param itemNamed finds in the notebook what an item field names
 * @throws InputError saying what the field takes.
 */
export function readCell(field: Field, typed: string, where: string, itemNamed: ItemFinder = asTyped): CellValue {
  if (typed.trim() === '') return null;
  switch (field.kind) {
    case 'number':
      return readNumber(field, typed, where);
    case 'choice':
      return readChoice(field, typed, where);
    case 'text':
      return readText(field, typed, where);
    case 'spectrum':
      return spectrumText(typedSpectrum(typed, where));
    case 'item':
      return itemNamed(field, typed.trim(), where);
    case 'photo':
      throw new InputError(where, shortened(typed), `${field.label} takes a photograph that is measured, not typed text.`);
    case 'trace':
      throw new InputError(where, shortened(typed), `${field.label} takes a trace read from a CSV file, not typed text.`);
  }
}

/** The value of an item field for what was typed in it. @throws InputError when nothing of that name is in the notebook */
export type ItemFinder = (field: ItemField, typed: string, where: string) => string;

function asTyped(_field: ItemField, typed: string): string {
  return typed;
}

/** '' or why a value that is allowed deserves a second look. */
export function unusual(field: Field, value: CellValue): string {
  if (field.kind === 'spectrum' && typeof value === 'string') return unusualSpectrum(value);
  if (field.kind !== 'number' || typeof value !== 'number' || !field.usual) return '';
  const { min, max } = field.usual;
  return value < min || value > max ? `outside the usual range ${min} to ${withUnit(max, field.unit)}` : '';
}

function unusualSpectrum(value: string): string {
  const { scale, values } = spectrumOf(value);
  const whole = scale === 'percent' ? 100 : 1;
  if (Math.max(...values) > whole) return 'above 100 %: fluorescence, or the white was not calibrated';
  return Math.min(...values) < 0 ? 'below 0 %: check the zero' : '';
}

function readNumber(field: NumberField, typed: string, where: string): number {
  const read = readInUnit(typed, field.unit ?? '');
  if ('problem' in read) {
    throw new InputError(where, shortened(typed), `${field.label} takes a number${field.unit ? ` in ${field.unit}` : ''}. ${read.problem}`);
  }
  const { value } = read;
  const tooLow = field.minExclusive ? value <= field.min : value < field.min;
  if (tooLow || value > field.max) {
    const from = field.minExclusive ? `above ${field.min}` : `at least ${field.min}`;
    throw new InputError(where, shortened(typed), `${field.label} must be ${from} and at most ${withUnit(field.max, field.unit)}; read '${shortened(typed)}'.`);
  }
  return value;
}

function readChoice(field: ChoiceField, typed: string, where: string): string {
  const wanted = typed.trim().toLowerCase();
  const found = field.choices.find(({ value, label, shortcut }) => [value, label, shortcut].some((name) => name.toLowerCase() === wanted));
  if (found) return found.value;
  const allowed = field.choices.map(({ label, shortcut }) => `${label} (${shortcut})`).join(', ');
  throw new InputError(where, shortened(typed), `${field.label} takes one of ${allowed}; read '${shortened(typed)}'.`);
}

function readText(field: TextField, typed: string, where: string): string {
  const text = typed.trim();
  const length = [...text].length;
  if (length > field.maxLength) throw new InputError(where, shortened(typed), `${field.label} takes at most ${field.maxLength} characters; this has ${length}.`);
  if (field.format === 'date' && !isIsoDate(text)) {
    throw new InputError(where, shortened(typed), `${field.label} takes a day as year-month-day, such as 2026-03-09; read '${shortened(typed)}'.`);
  }
  return text;
}

function shortened(typed: string): string {
  const characters = [...typed.trim()];
  return characters.length > 40 ? `${characters.slice(0, 40).join('')}…` : characters.join('');
}
