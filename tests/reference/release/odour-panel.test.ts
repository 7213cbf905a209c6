import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { odourPanelCalculation } from '../../../shared-lib/release/odour-panel.calculation.ts';

/** Minimum counts as printed by FAO (docrep V7180E, Appendix A) and tabulated in ISO 4120. */
const table = JSON.parse(readFileSync(path.join(import.meta.dirname, 'triangle-test.json'), 'utf8')) as {
  minimumCorrect: Record<string, Record<'a10' | 'a05' | 'a01' | 'a001', number | null>>;
};
const ALPHA = { a10: 0.1, a05: 0.05, a01: 0.01, a001: 0.001 } as const;
const run = (input: unknown) => runCalculation(odourPanelCalculation, input).results;

describe('triangle test against ISO 4120', () => {
  it('needs the tabulated number of right answers in every entry (n 5 to 100, four risks)', () => {
    const entries = Object.entries(table.minimumCorrect);
    expect(entries).toHaveLength(96);
    for (const [n, row] of entries) {
      for (const [column, alpha] of Object.entries(ALPHA)) {
        expect([n, column, run({ assessors: Number(n), correct: 0, alpha }).minimumCorrect!.value]).toEqual([n, column, row[column as keyof typeof row]]);
      }
    }
  });

  it('gives p = 0.0435 for 15 of 30 (exact binomial, chance 1/3)', () => {
    expect(run({ assessors: 30, correct: 15 }).pValue!.value).toBeCloseTo(0.0435, 4);
  });

  it('takes the guesses out: 15 of 30 right are 1.5 · 0.5 − 0.5 = 25 % who can tell (formula of ISO 4120, from memory)', () => {
    expect(run({ assessors: 30, correct: 15 }).shareDiscriminating!.value).toBeCloseTo(25, 10);
  });

  it('gives 1 for none right, and (1/3)ⁿ for all (arithmetic)', () => {
    expect(run({ assessors: 6, correct: 0 }).pValue!.value).toBe(1);
    expect(run({ assessors: 6, correct: 6 }).pValue!.value).toBeCloseTo(3 ** -6, 14);
  });
});

describe('interval of a median (W. J. Conover 3.2: sixth-order bracket of 6 covers 1 − 2·(1/2)⁶ = 96.9 %)', () => {
  it('runs from the lowest to the highest of six, and is missing for five', () => {
    expect(run({ intensities: [1, 1.5, 2, 2, 2.5, 3] }).median).toMatchObject({ value: 2, low: 1, high: 3, n: 6 });
    expect(run({ intensities: [1, 1.5, 2, 2.5, 3] }).median).toMatchObject({ value: 2, low: null, high: null });
  });

  it('of ten runs from the second to the ninth: 1 − 2·(1 + 10)/1024 = 97.9 %', () => {
    expect(run({ intensities: [0, 0.5, 1, 1, 1.5, 1.5, 2, 2.5, 3, 4] }).median).toMatchObject({ value: 1.5, low: 0.5, high: 3 });
  });
});
