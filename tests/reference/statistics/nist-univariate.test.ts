import { afterAll, describe, expect, it } from 'vitest';
import { summarise } from '../../../shared-lib/statistics/summarise.ts';
import sets from './nist-univariate.json';
import { lre, printDigits } from './lre.ts';

/** NumAcc2–4 are given by a rule (NIST StRD); the data are built from decimal literals. */
function repeated(first: number, low: number, high: number): number[] {
  return [first, ...Array.from({ length: 500 }, () => [low, high]).flat()];
}

// Tolerances in digits: the limit of the data where that is below the method's (float64 cannot hold 1000000.2 exactly;
// a perfect two-pass sum reaches 9.5 and 8.3 digits on NumAcc3 and NumAcc4).
const cases: { name: string; values: number[]; mean: number; sd: number; sdDigits: number }[] = [
  { name: 'Lottery', values: sets.Lottery.data, mean: sets.Lottery.certified_mean, sd: sets.Lottery.certified_sd, sdDigits: 12 },
  { name: 'Lew', values: sets.Lew.data, mean: sets.Lew.certified_mean, sd: sets.Lew.certified_sd, sdDigits: 12 },
  { name: 'Mavro', values: sets.Mavro.data, mean: sets.Mavro.certified_mean, sd: sets.Mavro.certified_sd, sdDigits: 12 },
  { name: 'NumAcc1', values: sets.NumAcc1.data, mean: sets.NumAcc1.certified_mean, sd: sets.NumAcc1.certified_sd, sdDigits: 14 },
  { name: 'NumAcc2', values: repeated(1.2, 1.1, 1.3), mean: sets.NumAcc2.certified_mean, sd: sets.NumAcc2.certified_sd, sdDigits: 12 },
  { name: 'NumAcc3', values: repeated(1000000.2, 1000000.1, 1000000.3), mean: 1000000.2, sd: 0.1, sdDigits: 9.4 },
  { name: 'NumAcc4', values: repeated(10000000.2, 10000000.1, 10000000.3), mean: sets.NumAcc4.certified_mean, sd: sets.NumAcc4.certified_sd, sdDigits: 8.2 },
];

describe('summaries against the NIST StRD univariate sets', () => {
  const digits: Record<string, string | number>[] = [];
  afterAll(() => printDigits('NIST univariate', digits));

  it.each(cases)('$name', ({ name, values, mean, sd, sdDigits }) => {
    const summary = summarise(values);
    digits.push({ set: name, mean: lre(summary.mean, mean), sd: lre(summary.standardDeviation, sd) });
    expect(lre(summary.mean, mean)).toBeGreaterThanOrEqual(14);
    expect(lre(summary.standardDeviation, sd)).toBeGreaterThanOrEqual(sdDigits);
  });
});
