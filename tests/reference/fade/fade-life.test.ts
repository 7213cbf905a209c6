import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { fadeLifeCalculation } from '../../../shared-lib/fade/fade-life.calculation.ts';
import { fadeLife } from '../../../shared-lib/fade/fade-life.ts';
import { retainedQuantity } from '../../../shared-lib/fade/fade-quantity.ts';

const run = (input: unknown) => runCalculation(fadeLifeCalculation, input);

/** Half-width of a 95 % t interval over the t quantile is the standard error; quantiles from t tables. */
function standardError({ value, high }: { value: number | null; high: number | null }, t: number): number {
  return (high! - value!) / t;
}

/** Digits in which two numbers agree, as the NIST StRD counts them. */
function agreeingDigits(found: number, certified: number): number {
  return -Math.log10(Math.abs(found - certified) / Math.abs(certified));
}

describe('growth to a plateau against NIST StRD, the same equation b1·(1 − e^(−b2·x))', () => {
  it('BoxBOD, certified values', () => {
    const x = [1, 2, 3, 5, 7, 10];
    const y = [109, 149, 149, 191, 213, 224];
    const { results, table } = run({ readings: x.map((exposure, i) => ({ exposure, deltaE: y[i] })), endpoint: { deltaE: 150 } });
    expect(agreeingDigits(results.plateau!.value!, 213.80940889)).toBeGreaterThan(6);
    expect(agreeingDigits(results.rate!.value!, 0.54723748542)).toBeGreaterThan(6);
    // t(0.975; 4) = 2.776445.
    expect(standardError(results.plateau!, 2.776445105)).toBeCloseTo(12.354515176, 4);
    expect(standardError(results.rate!, 2.776445105)).toBeCloseTo(0.10455993237, 6);
    const chosen = table.find((row) => row.chosen)!;
    expect(chosen.model).toBe('growth-to-plateau');
    expect(agreeingDigits(chosen.residualSumOfSquares as number, 1168.0088766)).toBeGreaterThan(8);
    // Where the certified curve meets 150.
    expect(results.exposureToLimit!.value).toBeCloseTo(-Math.log(1 - 150 / 213.80940889) / 0.54723748542, 5);
  });

  it('Misra1a, certified values from memory', () => {
    const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
    const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
    const { results, table } = run({ readings: x.map((exposure, i) => ({ exposure, deltaE: y[i] })) });
    expect(agreeingDigits(results.plateau!.value!, 238.94212918)).toBeGreaterThan(6);
    expect(agreeingDigits(results.rate!.value!, 5.5015643181e-4)).toBeGreaterThan(6);
    expect(agreeingDigits(table.find((row) => row.chosen)!.residualSumOfSquares as number, 0.12455138894)).toBeGreaterThan(7);
    expect(results.exposureToLimit).toBeUndefined();
  });
});

/** Closed forms of the kinetics; the figures are those worked out apart for k = 0.002, τ = 200 and β = 0.8. */
describe('exposure to 70 % retained against the closed forms', () => {
  const exposures = [0, 25, 50, 75, 100, 150, 200];
  it.each<[string, (t: number) => number, number]>([
    ['first-order', (t) => Math.exp(-0.002 * t), 178.337],
    ['zero-order', (t) => 1 - 0.002 * t, 150.0],
    ['stretched-exponential', (t) => Math.exp(-((t / 200) ** 0.8)), 55.128],
  ])('%s', (model, curve, expected) => {
    const { results, table } = run({ readings: exposures.map((exposure) => ({ exposure, retained: curve(exposure) })) });
    expect(table.find((row) => row.chosen)!.model).toBe(model);
    expect(results.exposureToLimit!.value).toBeCloseTo(expected, 3);
  });
});

describe('profile interval of the exposure to the limit', () => {
  it('for zero order is the t interval of the slope, turned over: the exact answer of the linear model', () => {
    const x = [20, 40, 60, 80, 100];
    const y = [0.97, 0.95, 0.905, 0.885, 0.84];
    // Least squares through the start by hand; t(0.975; 4) = 2.776445 (t tables).
    const sumXX = x.reduce((sum, at) => sum + at * at, 0);
    const rate = x.reduce((sum, at, i) => sum + at * (1 - y[i]!), 0) / sumXX;
    const residual = Math.sqrt(x.reduce((sum, at, i) => sum + (y[i]! - (1 - rate * at)) ** 2, 0) / 4);
    const reach = (2.776445105 * residual) / Math.sqrt(sumXX);
    const { choice, lives, life, rivals } = fadeLife(retainedQuantity, [{ name: '', exposures: x, values: y }], 0.7, 'h', 0.95);
    expect(choice.chosen.model.id).toBe('zero-order');
    expect(lives[0]!.value).toBeCloseTo(0.3 / rate, 5);
    expect(lives[0]!.low).toBeCloseTo(0.3 / (rate + reach), 3);
    expect(lives[0]!.high).toBeCloseTo(0.3 / (rate - reach), 3);
    // What is reported also holds the interval of first order, which these readings do not rule out: e^(−kx) fades slower later.
    expect(rivals.map(({ model }) => model.id)).toEqual(['first-order']);
    expect(life!.low).toBeCloseTo(lives[0]!.low!, 8);
    expect(life!.high!).toBeGreaterThan(lives[0]!.high!);
  });
});

describe('radiant exposure, H = 3.6·E·t', () => {
  // 42 W/m² for 48 h = 7257.6 kJ/m²; 60 W/m² for 1000 h = 216 MJ/m².
  it('42 W/m² for 48 h is 7257.6 kJ/m²', () => {
    const exposures = [0, 16, 32, 64];
    const { results } = run({
      readings: exposures.map((exposure) => ({ exposure, retained: 1 - (0.3 * exposure) / 48 })),
      irradianceWPerM2: 42,
    });
    expect(results.exposureToLimit!.value).toBeCloseTo(48, 8);
    expect(results.radiantExposureToLimit!.value).toBeCloseTo(7257.6, 5);
    expect(results.radiantExposureToLimit!.unit).toBe('kJ/m²');
  });

  it('216 MJ/m² at 60 W/m² is 1000 h', () => {
    const exposures = [0, 72, 144, 288];
    const { results } = run({
      readings: exposures.map((exposure) => ({ exposure, retained: 1 - (0.3 * exposure) / 216 })),
      exposureUnit: 'MJ/m²',
      irradianceWPerM2: 60,
    });
    expect(results.exposureToLimit!.value).toBeCloseTo(216, 8);
    expect(results.hoursToLimit!.value).toBeCloseTo(1000, 7);
  });
});
