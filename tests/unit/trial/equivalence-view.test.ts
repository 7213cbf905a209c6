import { describe, expect, it } from 'vitest';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Property } from '../../../shared-lib/method/method.ts';
import type { ColumnTrial } from '../../../shared-lib/trial/column-trial.ts';
import { equivalenceView } from '../../../shared-lib/trial/equivalence-view.ts';
import type { TrialReading } from '../../../shared-lib/trial/trial-reading.ts';

const property: Property = { key: 'mean', title: 'Bond', unit: 'N/15 mm', better: 'higher', limited: true, headline: true };
const trial = (name: string, readings: TrialReading[]): ColumnTrial => ({ trialId: name, name, control: false, readings, tests: [] });
const exact = (...values: number[]): TrialReading[] => values.map((value) => ({ value }));
const margin = (size: number) => ({ lowerBound: -size, upperBound: size });
const ask = (a: TrialReading[], b: TrialReading[], size: number, of: Property = property) => equivalenceView(of, trial('R4', a), trial('R0', b), margin(size), 0.95);

function refusal(act: () => unknown): InputError {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('it was taken');
}

describe('equivalence of two trials', () => {
  const [a, b] = [exact(3.0, 3.1, 3.2, 3.3, 3.4), exact(3.05, 3.15, 3.25, 3.35, 3.45)];

  it('of exact readings is shown or not by hand figures', () => {
    // s² = 0.025 in both, so the standard error of −0.05 is √(0.05/5) = 0.1; t(0.95, 8) = 1.8595 (Student's table): −0.236 to 0.136.
    const shown = ask(a, b, 0.25);
    expect(shown.shown).toBe(true);
    expect(shown.result.results.difference!.low).toBeCloseTo(-0.05 - 0.18595, 4);
    expect(shown.text).toMatch(/R4 is equivalent to R0 in Bond/);
    expect(ask(a, b, 0.2)).toMatchObject({ shown: false });
    expect(ask(a, b, 0.2).text).toMatch(/not shown.*Not shown does not mean different/);
  });

  it('takes torn specimens for the bounds that they are', () => {
    const torn: TrialReading[] = [...exact(3.0, 3.1, 3.2, 3.3), { value: 3.3, open: 'up' }];
    const view = ask(torn, b, 0.6);
    const { low, high } = view.result.results.difference!;
    // A bound from below moves the mean up and leaves the upper end farther out than the lower one.
    expect(view.result.results.difference!.value!).toBeGreaterThan(-0.07);
    expect(high! - view.result.results.difference!.value!).toBeGreaterThan(view.result.results.difference!.value! - low!);
    expect(view.text).toContain('1 reading is only a bound or bracket and counts as such.');
    expect(view.shown).toBe(low! > -0.6 && high! < 0.6);
  });

  it('both tests agree with the interval, also with brackets', () => {
    const brackets = [3.0, 3.1, 3.1, 3.2, 3.3, 3.4].map((low) => ({ value: low + 0.05, low, high: low + 0.1 }));
    for (const size of [0.1, 0.2, 0.25, 0.3, 0.5]) {
      const { shown, result } = ask(brackets, b, size);
      const { low, high } = result.results.difference!;
      expect(shown).toBe(low! >= -size && high! <= size);
    }
  });

  it.each<[string, () => unknown, RegExp]>([
    ['a trial of which all tore', () => ask(exact(3, 3.1, 3.2).map((reading) => ({ ...reading, open: 'up' as const })), b, 0.3), /Every reading of R4 is only a lower bound.*neither shown nor ruled out.*Add readings that are not bounds/],
    ['brackets that show no spread', () => ask([3, 3, 3].map((low) => ({ value: 3.5, low, high: low + 1 })), b, 0.3), /R4: .*no spread.*read more finely/],
    ['one reading', () => ask(exact(3), b, 0.3), /R4 has one reading/],
    ['a grade', () => ask(a, b, 0.3, { ...property, kind: 'grade' }), /is a grade/],
    ['readings without any scatter', () => ask(exact(3, 3, 3), exact(3, 3, 3), 0.3), /no spread/],
  ])('%s is refused in words', (_, act, words) => {
    expect(refusal(act).message).toMatch(words);
  });
});
