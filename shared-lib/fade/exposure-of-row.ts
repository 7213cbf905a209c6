import type { CellValue } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { daysBetween, isIsoDate } from '../quantity/iso-date.ts';

/**
 * The exposure so far of a row: as typed, or, counted in days, from the day of the reading and the first day of exposure.
 * `undefined` where neither says it; below 0 where the reading is older than the exposure.
 */
export function exposureOfRow(values: Record<string, CellValue>, conditions: Record<string, CellValue>): number | undefined {
  const typed = numberIn(values, 'exposure');
  if (typed !== undefined || textIn(conditions, 'exposureUnit') !== 'd') return typed;
  const [from, on] = [textIn(conditions, 'exposedFrom'), textIn(values, 'readOn')];
  if (from === undefined || on === undefined || !isIsoDate(from) || !isIsoDate(on)) return undefined;
  return daysBetween(from, on);
}
