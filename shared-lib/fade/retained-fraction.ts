import { InputError } from '../calculation/input-error.ts';

/** Values above this cannot be fractions of what was there; a gain of half would be no fade. */
const mostFraction = 1.5;

/**
 * Retained values as fractions, whether they were given as fractions (1 = nothing lost) or percent (100 = nothing lost).
 * Where the caller does not say, the largest value decides, and the note says how.
 * @throws InputError when the values cannot all be of one kind.
 */
export function retainedFractions(values: number[], as: 'fraction' | 'percent' | undefined): { fractions: number[]; note: string } {
  const largest = Math.max(...values);
  const kind = as ?? (largest > mostFraction ? 'percent' : 'fraction');
  const note = `Retained values are ${kind === 'percent' ? 'percent' : 'fractions'}${as ? '' : ', as their size shows'}.`;
  if (kind === 'fraction') {
    const culprit = values.findIndex((value) => value > mostFraction);
    if (culprit >= 0) {
      throw new InputError(`readings[${culprit}].retained`, values[culprit], `A retained fraction is about 1 before exposure; ${values[culprit]} looks like percent.`);
    }
    return { fractions: values, note };
  }
  if (largest < 20) {
    throw new InputError('retainedAs', as ?? null, `The largest retained value is ${largest}; as percent nearly all was lost before the first reading. Say retainedAs: "fraction" or check the readings.`);
  }
  const culprit = values.findIndex((value, index) => value > 0 && value <= mostFraction && (values[index - 1] ?? 100) > 20);
  if (culprit >= 0 && as === undefined) {
    throw new InputError(`readings[${culprit}].retained`, values[culprit], `Retained values must all be fractions or all percent; ${values[culprit]} stands among percent. Say retainedAs to keep it.`);
  }
  return { fractions: values.map((value) => value / 100), note };
}
