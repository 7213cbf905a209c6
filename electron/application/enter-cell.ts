import type { CellValue, Field } from '../../shared-lib/method/method.ts';
import type { StoredCell } from './queries/tests.ts';
import { requireReason } from './require-reason.ts';
import { withUnit } from './with-unit.ts';

/** What is to be recorded when `value` stands in a cell now: nothing, a first value, or a correction of the one before. */
export type CellChange = { change: 'none' } | { change: 'entered' } | { change: 'corrected'; before: CellValue; reason: string };

/**
 * A value that somebody typed is only ever corrected, with a reason. A value that was filled in may be typed over.
 * @param filledIn the value there was filled in by the program and nobody has typed it
 * @throws InputError on the field `reason` when a correction comes without one
 */
export function cellChange(field: Field, before: StoredCell | undefined, value: CellValue, reason: string, filledIn: boolean): CellChange {
  if (value === (before?.value ?? null)) return { change: 'none' };
  if (!before || filledIn) return { change: 'entered' };
  requireReason(reason, `${field.label} was entered before${asWhat(field, before)}`);
  return { change: 'corrected', before: before.value, reason: reason.trim() };
}

function asWhat({ kind, unit }: Field, { value, typed }: StoredCell): string {
  if (value === null) return ' and cleared';
  if (kind === 'spectrum') return '';
  return kind === 'trace' || kind === 'photo' ? '' : ` as ${withUnit(typed || value, unit)}`;
}
