import { readDecimal } from '../../shared-lib/quantity/decimal.ts';

/** A number that may be left out, as typed; the empty field is `null`. */
export function readOptional(typed: string): { value: number | null } | { problem: string } {
  return typed.trim() === '' ? { value: null } : readDecimal(typed);
}

/** The number as it stands in a field to be changed. */
export function asTyped(value: number | null | undefined): string {
  return value == null ? '' : String(value);
}
