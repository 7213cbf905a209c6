import { readInUnit } from '../../shared-lib/quantity/read-in-unit.ts';

/** A number that may be left out, as typed, with its unit or without; the empty field is `null`. */
export function readOptional(typed: string, unit = ''): { value: number | null } | { problem: string } {
  if (typed.trim() === '') return { value: null };
  const read = readInUnit(typed, unit);
  return unit && 'problem' in read ? { problem: `This is a number in ${unit}. ${read.problem}` } : read;
}

/** The number as it stands in a field to be changed. */
export function asTyped(value: number | null | undefined): string {
  return value == null ? '' : String(value);
}
