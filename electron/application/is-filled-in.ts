import type { Field } from '../../shared-lib/method/method.ts';
import type { StoredCell, StoredTest } from './queries/tests.ts';

/** A value of these has no typed text where it came from a file, but a person chose it. */
const CHOSEN_AS_FILE: ReadonlySet<Field['kind']> = new Set(['trace', 'photo', 'spectrum']);

/**
 * Filled in by the program, with the start of the test, from the row above or by what was chosen elsewhere, and not typed over
 * since: it is replaced without a reason. Once the test was finished the result stands on it like on any other reading.
 */
export function isFilledIn(test: StoredTest, field: Field, cell: StoredCell | undefined): boolean {
  if (test.finished || cell === undefined) return false;
  return cell.seq === test.startedSeq || (cell.typed === '' && cell.corrections === 0 && !CHOSEN_AS_FILE.has(field.kind));
}
