import { describe, expect, it } from 'vitest';
import { runCalculation, type Calculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { allCalculations } from '../../../shared-lib/registry/calculations.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import { oddVariant } from './odd-inputs.ts';
import { usualInputs } from './usual-inputs.ts';

const SEED = 20_261_125;
const VARIANTS = process.env.LAYDOWN_SLOW === '1' ? 200 : 60;
const LONGEST_MS = 5000;

/** Words that only a fault in the program puts in a sentence, and marks of a stack trace. */
const faults = /\bNaN\b|\bundefined\b|Infinity|\[object|\n|\bat \S+:\d+|Invalid input|\bexpected \w+, received/;

describe.each(allCalculations.map((calculation) => [calculation.id, calculation] as const))('%s', (id, calculation) => {
  const usual = usualInputs[id] ?? [];

  it('gives a result for what is usual', () => {
    expect(usual.length).toBeGreaterThan(0);
    for (const input of usual) expect(troubleOf(calculation, input, false)).toBe('');
  });

  it('answers whatever is put in with finite numbers or a sentence, soon', { timeout: 120_000 }, () => {
    const random = seededRandom(SEED).uniform;
    const troubles: unknown[] = [];
    for (let index = 0; index < VARIANTS; index++) {
      const input = oddVariant(usual[index % usual.length], random);
      const from = process.cpuUsage();
      const trouble = troubleOf(calculation, input, true);
      // Of the processor, for others may be at work on the machine.
      const tookMs = process.cpuUsage(from).user / 1000;
      if (trouble !== '' || tookMs > LONGEST_MS) troubles.push({ trouble, tookMs, input: JSON.stringify(input)?.slice(0, 2000) });
    }
    expect(troubles).toEqual([]);
  });
});

/** '' for a clean result, and where it may be refused for a refusal in one sentence; else what is wrong. */
function troubleOf(calculation: Calculation, input: unknown, mayBeRefused: boolean): string {
  // A name that was put in may be said again.
  const named = wordsOf(input).filter((word) => faults.test(word));
  const isFaulty = (word: string) => faults.test(named.reduce((rest, name) => rest.replaceAll(name, ''), word));
  try {
    return wordsOf(runCalculation(calculation, input)).find(isFaulty) ?? '';
  } catch (error) {
    if (!(error instanceof InputError)) return String((error as Error).stack);
    return mayBeRefused && /^\S.*[.?]$/su.test(error.message) && !isFaulty(error.message) ? '' : `refused by: ${error.message}`;
  }
}

/** Every text of a result; a number that is none as it would be printed. */
function wordsOf(value: unknown): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [String(value)];
  if (typeof value === 'string') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(wordsOf) : [];
}
