import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import type { BenchReadings, BenchRow } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { FAILURE_MODES, type FailureMode } from './failure-mode.ts';

/** The usual strip, taken with a flag when no width was entered at all. */
const USUAL_WIDTH_MM = 15;

/** The failure mode chosen for a row. */
export function modeOf(values: BenchRow['values'], index: number): FailureMode {
  const field = `rows[${index}].mode`;
  const chosen = textIn(values, 'mode');
  if (chosen === undefined) throw new InputError(field, null, `Specimen ${index + 1} has no failure mode: choose how it came apart.`);
  const mode = FAILURE_MODES.find((known) => known === chosen);
  if (!mode) throw new InputError(field, chosen, `The failure mode of specimen ${index + 1} must be one of ${FAILURE_MODES.join(', ')}, not ${chosen}.`);
  return mode;
}

/** Width of a row's strip: its own, else that of the test, else the usual 15 mm (see `widthFlag`). */
export function widthOf(bench: BenchReadings, values: BenchRow['values'], index: number): number {
  const ofRow = numberIn(values, 'widthMm');
  const widthMm = ofRow ?? numberIn(bench.conditions, 'stripWidthMm') ?? USUAL_WIDTH_MM;
  if (widthMm <= 0) {
    throw new InputError(ofRow === undefined ? 'conditions.stripWidthMm' : `rows[${index}].widthMm`, widthMm, `The width of specimen ${index + 1} must be more than 0 mm, not ${widthMm}.`);
  }
  return widthMm;
}

/** Says that 15 mm was taken for rows whose width stands nowhere. */
export function widthFlag(bench: BenchReadings, isBegun: (row: BenchRow) => boolean): Flag[] {
  const assumed = numberIn(bench.conditions, 'stripWidthMm') === undefined && bench.rows.some((row) => isBegun(row) && numberIn(row.values, 'widthMm') === undefined);
  return assumed ? [{ code: 'width-assumed', where: 'conditions.stripWidthMm', text: `No strip width was entered; ${USUAL_WIDTH_MM} mm was taken.` }] : [];
}
