import type { TableRow } from '../calculation/result.ts';
import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { TrialDifference } from '../notebook/trial-views.ts';
import { formatValue } from '../quantity/format.ts';

/**
 * A row 'a against the control' of the calculation `compare-trials` for the table.
 * @param groups its rows of trials, which hold the means
 */
export function trialDifference(row: TableRow, groups: readonly TableRow[], response: Response, property: Property, level: number): TrialDifference {
  const [difference, low, high, pValue] = [row.difference, row.low, row.high, row.p].map((value) => (typeof value === 'number' ? value : null)) as [number | null, number | null, number | null, number | null];
  const apart = pValue !== null && pValue < 1 - level;
  const grade = property.kind === 'grade';
  const value = grade ? null : difference;
  const shown = formatValue({ value, unit: property.unit, low, high, level: low === null && high === null ? null : level, n: 0, bound: 'exact' });
  return {
    value,
    text: value === null ? '' : value > 0 ? `+${shown.text}` : shown.text,
    intervalText: grade ? '' : shown.intervalText,
    pValue,
    word: apart ? direction(difference, meanOf(groups, row.a), meanOf(groups, row.b), response) : 'open',
    star: apart ? '*' : '',
  };
}

function meanOf(groups: readonly TableRow[], name: unknown): number | null {
  const mean = groups.find((row) => row.group === name)?.mean;
  return typeof mean === 'number' ? mean : null;
}

/** Against a target only trials on the same side of it can be said to be nearer or farther. */
function direction(difference: number | null, mean: number | null, control: number | null, { goal, target }: Response): TrialDifference['word'] {
  if (difference === null || difference === 0) return 'different';
  if (goal !== 'target') return difference > 0 === (goal === 'higher') ? 'better' : 'worse';
  if (mean === null || control === null || (mean - target!) * (control - target!) < 0) return 'different';
  return Math.abs(mean - target!) < Math.abs(control - target!) ? 'better' : 'worse';
}
