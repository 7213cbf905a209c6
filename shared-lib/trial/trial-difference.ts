import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { TrialDifference } from '../notebook/trial-views.ts';
import { differenceUnit } from '../quantity/difference-unit.ts';
import { formatValue } from '../quantity/format.ts';
import type { TrialLevel, TrialPair } from '../statistics/trial-comparison.ts';

/**
 * A trial against the control for the table.
 * @param levels of all trials, in the places that the pair names
 */
export function trialDifference(pair: TrialPair, levels: readonly TrialLevel[], response: Response, property: Property, level: number): TrialDifference {
  const { difference, low, high, p: pValue } = pair;
  const apart = pValue !== null && pValue < 1 - level;
  const grade = property.kind === 'grade';
  const value = grade ? null : difference;
  const shown = formatValue({ value, unit: differenceUnit(property.unit), low, high, level: low === null && high === null ? null : level, n: 0, bound: 'exact' });
  return {
    value,
    text: value === null ? '' : value > 0 ? `+${shown.text}` : shown.text,
    intervalText: grade ? '' : shown.intervalText,
    pValue,
    word: apart ? direction(difference, levels[pair.a]!.value, levels[pair.b]!.value, response) : 'open',
    star: apart ? '*' : '',
  };
}

/** Against a target only trials on the same side of it can be said to be nearer or farther. */
function direction(difference: number | null, mean: number | null, control: number | null, { goal, target }: Response): TrialDifference['word'] {
  if (difference === null || difference === 0) return 'different';
  if (goal !== 'target') return difference > 0 === (goal === 'higher') ? 'better' : 'worse';
  if (mean === null || control === null || (mean - target!) * (control - target!) < 0) return 'different';
  return Math.abs(mean - target!) < Math.abs(control - target!) ? 'better' : 'worse';
}
