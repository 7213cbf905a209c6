import { readDecimal } from '../../shared-lib/quantity/decimal.ts';

/**
 * What ↑ and ↓ put in a cell.
 * @param steps the method's values, ascending
 * @param typed what stands in the cell
 * @param above what stands in the row above: an empty cell starts there, since neighbours are alike
 */
export function stepValue(steps: number[], typed: string, above: string, direction: 1 | -1): string {
  const current = numberIn(typed);
  if (current === null) return String(numberIn(above) ?? steps[Math.floor((steps.length - 1) / 2)]);
  const next = direction > 0 ? steps.find((step) => step > current) : steps.findLast((step) => step < current);
  return String(next ?? current);
}

function numberIn(typed: string): number | null {
  const read = readDecimal(typed);
  return 'value' in read ? read.value : null;
}
