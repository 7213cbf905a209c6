import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber } from '../quantity/format.ts';
import { chiSquareQuantile } from './distributions.ts';
import { grubbsTest } from './grubbs.ts';
import { shapiroWilk } from './shapiro-wilk.ts';
import { summarise } from './summarise.ts';
import { levelSchema } from './level.ts';

const input = z.strictObject({
  values: z.array(z.number()).min(1).max(100_000),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

/** Below this, a sample is called not normal, or a value outlying. */
const SIGNIFICANCE = 0.05;

export const summaryCalculation = defineCalculation({
  id: 'summary',
  version: '1',
  title: 'Summary of replicate readings',
  input,
  compute: ({ values, unit, level }) => {
    const summary = summarise(values, level);
    const { n, standardDeviation: sd } = summary;
    const normality = shapiroWilk(values);
    const outlier = grubbsTest(values, SIGNIFICANCE);
    const plain = (value: number | null, unitOfValue = unit) => valueWithoutInterval(value, unitOfValue, n);
    const flags: Flag[] = [];
    const notes: string[] = [];
    if (n === 1) notes.push('One reading shows no spread, so there is no standard deviation and no interval.');
    else if (sd === 0) notes.push('All readings are equal: there is no spread to judge normality or outliers by, and the interval has no width.');
    else if (n < 3) notes.push('Normality and outliers need at least three readings.');
    if (outlier?.outlying) {
      flags.push({
        code: 'outlier',
        where: `values[${outlier.index}]`,
        text: `${values[outlier.index]} lies ${formatNumber(outlier.statistic, 2)} standard deviations from the mean (Grubbs, two-sided, critical ${formatNumber(outlier.critical, 2)} for n = ${n}); it is kept: look for its cause.`,
      });
    }
    if (normality && normality.p < SIGNIFICANCE) {
      flags.push({
        code: 'not-normal',
        where: 'values',
        text: `The readings are unlikely to be normal (Shapiro–Wilk p = ${formatNumber(normality.p, 3)}); trust the median rather than the interval of the mean.`,
      });
    }
    if (normality === null && n > 5000) notes.push('Normality is tested for up to 5000 readings.');
    return {
      results: {
        mean: { ...plain(summary.mean), low: summary.low, high: summary.high, level: summary.low === null ? null : level },
        median: plain(summary.median),
        standardDeviation: sd === null || sd === 0 ? plain(sd) : { ...plain(sd), ...spreadInterval(sd, n, level), level },
        standardError: plain(summary.standardError),
        minimum: plain(summary.minimum),
        maximum: plain(summary.maximum),
        normalityP: plain(normality?.p ?? null, ''),
        outlierG: plain(outlier?.statistic ?? null, ''),
      },
      flags,
      notes,
    };
  },
  columns: [],
  cautions: [],
  sources: [
    'Interval of the mean: Student’s t, ISO 2602',
    'Interval of the standard deviation: chi-square, ISO 2854',
    'Normality: P. Royston, Algorithm AS R94, Appl. Stat. 44 (1995) 547',
    'Outliers: F. E. Grubbs, Technometrics 11 (1969) 1; ISO 5725-2',
  ],
});

function spreadInterval(sd: number, n: number, level: number): Pick<ResultValue, 'low' | 'high'> {
  const at = (p: number) => sd * Math.sqrt((n - 1) / chiSquareQuantile(p, n - 1));
  return { low: at((1 + level) / 2), high: at((1 - level) / 2) };
}
