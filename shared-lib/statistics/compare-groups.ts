import { InputError } from '../calculation/input-error.ts';
import type { Censored } from './censored-normal.ts';
import { compactLetters } from './compact-letters.ts';
import { compareBounded } from './compare-bounded.ts';
import { compareGrades } from './compare-grades.ts';
import { compareNumbers } from './compare-numbers.ts';
import type { TrialComparison } from './trial-comparison.ts';
import { trialSentences } from './trial-sentences.ts';
import type { TrialSentences } from './trial-sentences.ts';

export interface GroupsToCompare {
  groups: { name: string; readings: Censored[] }[];
  /** Name of the group that all others are compared with; `null`: every pair. */
  control: string | null;
  kind: 'number' | 'grade';
  /** Of grades: the ends of their scale. */
  scale: { low: number; high: number };
  /** Smallest difference that matters, if the reader has said it. */
  difference?: number | undefined;
  unit: string;
  level: number;
}

export interface GroupComparison extends TrialComparison {
  /** Place of the control. */
  control: number | null;
  /** By place: two groups share a letter exactly when they are not told apart. `null` with a control, or where none can be given. */
  letters: string[] | null;
  sentences: TrialSentences;
}

/**
 * Groups of readings against a control or against each other. Chooses the procedure by the kind of reading: ranks for
 * grades, likelihood where readings are only bounds, means otherwise; the notes say which and why.
 * @throws InputError for a control that is not there, a name that comes twice, or a grade outside its scale or only a bound
 */
export function compareGroups({ groups, control: controlName, kind, scale, difference, unit, level }: GroupsToCompare): GroupComparison {
  const names = groups.map(({ name }) => name);
  const control = placeOfControl(names, controlName);
  refuseRepeatedNames(names);
  if (kind === 'grade') refuseOddGrades(groups, scale);
  const exact = groups.every(({ readings }) => readings.every(({ low, high }) => low === high));
  const numbers = () => groups.map(({ name, readings }) => ({ name, values: readings.map(({ low }) => low!) }));
  const comparison = !exact
    ? compareBounded(groups, control, level)
    : kind === 'grade'
      ? compareGrades(numbers(), control, level)
      : compareNumbers(numbers(), control, level);
  return {
    ...comparison,
    control,
    letters: control === null ? lettersOf(comparison, 1 - level) : null,
    sentences: trialSentences(comparison, { names, counts: groups.map(({ readings }) => readings.length), unit, level, grades: kind === 'grade', wanted: difference }),
  };
}

function placeOfControl(names: string[], control: string | null): number | null {
  if (control === null) return null;
  const place = names.indexOf(control);
  if (place === -1) throw new InputError('control', control, `control must be the name of one of the groups: ${names.join(', ')}.`);
  return place;
}

function refuseRepeatedNames(names: string[]): void {
  const repeated = names.findIndex((name, index) => names.indexOf(name) !== index);
  if (repeated !== -1) throw new InputError(`groups[${repeated}].name`, names[repeated], `Each group needs a name of its own; ${names[repeated]} comes twice.`);
}

function refuseOddGrades(groups: GroupsToCompare['groups'], { low: lowest, high: highest }: GroupsToCompare['scale']): void {
  groups.forEach(({ name, readings }, g) => readings.forEach(({ low, high }, v) => {
    const field = `groups[${g}].values[${v}]`;
    if (low === null || low !== high) throw new InputError(field, low ?? high, `${field} must be a grade; bounds are for measured numbers.`);
    if (low < lowest || low > highest) throw new InputError(field, low, `A grade of ${name} is ${low}, outside the scale from ${lowest} to ${highest}; correct it, or give the scale that was used.`);
  }));
}

function lettersOf({ levels, pairs }: TrialComparison, alpha: number): string[] | null {
  if (pairs.some(({ p }) => p === null)) return null;
  const order = levels.map((_, place) => place).sort((a, b) => (levels[b]!.value ?? levels[b]!.low ?? 0) - (levels[a]!.value ?? levels[a]!.low ?? 0) || a - b);
  const different = new Set(pairs.filter(({ p }) => p! < alpha).map(({ a, b }) => `${a} ${b}`));
  return compactLetters(order, (a, b) => different.has(`${Math.min(a, b)} ${Math.max(a, b)}`));
}
