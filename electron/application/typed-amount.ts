import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { readInUnit } from '../../shared-lib/quantity/read-in-unit.ts';

/**
 * An amount as it is typed into a form, with its unit or without; '' is `null`.
 * @throws InputError on `field`
 */
export function typedAmount(typed: string, field: string, label: string, unit: string, range: { low: number; lowIsOut?: boolean; high: number }): number | null {
  const text = typed.trim();
  if (text === '') return null;
  const read = readInUnit(text, unit);
  if ('problem' in read) throw new InputError(field, typed, `${label} takes a number in ${unit}. ${read.problem}`);
  const { value } = read;
  if (value < range.low || value > range.high || (range.lowIsOut && value === range.low)) {
    throw new InputError(field, typed, `${label} must be ${range.lowIsOut ? 'above' : 'at least'} ${range.low} and at most ${range.high} ${unit}; read '${text.slice(0, 40)}'.`);
  }
  return value;
}
