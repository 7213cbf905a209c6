import { describe, expect, it } from 'vitest';
import { countTrend } from '../../../shared-lib/statistics/count-trend.ts';
import { poissonInterval } from '../../../shared-lib/statistics/poisson-interval.ts';
import { rateRatio } from '../../../shared-lib/statistics/rate-ratio.ts';

describe('the exact interval of a count', () => {
  it.each([
    // Example of cipoisson in R's package survival (seen): 1.089865 to 10.24153, of which its page shows that the last digits are off.
    [4, 0.95, 1.089865, 10.24153, 1e-4],
    // A public page on Garwood's method (seen), to two decimals.
    [25, 0.9, 17.38, 34.92, 6e-3],
    [25, 0.95, 16.18, 36.9, 6e-3],
    [25, 0.99, 14.0, 41.0, 6e-3],
    // −ln 0.025, exact: the upper end where nothing was counted.
    [0, 0.95, 0, 3.6888794541, 1e-9],
  ])('of %i at %f', (count, level, low, high, tolerance) => {
    const interval = poissonInterval(count, level);
    expect(Math.abs(interval.low - low)).toBeLessThan(tolerance);
    expect(Math.abs(interval.high - high)).toBeLessThan(tolerance);
  });

  it('holds for the weed seeds in meadow grass (Snedecor & Cochran 1967, p. 224: 296 in 98 samples; limits as a numerical library prints them, seen)', () => {
    const perSample = (level: number) => Object.values(poissonInterval(296, level)).map((end) => Number((end / 98).toFixed(4)));
    expect(perSample(0.95)).toEqual([2.6861, 3.3848]);
    expect(perSample(0.99)).toEqual([2.5874, 3.5027]);
  });

  it.each([-1, 1.5, Number.NaN])('is refused for %f', (count) => {
    expect(() => poissonInterval(count)).toThrow(RangeError);
  });
});

describe('the ratio of two rates', () => {
  it('has the interval that R’s poisson.test gives for its own example (11 in 800 against 21 in 3011; output from memory, recomputed independently)', () => {
    const ratio = rateRatio({ count: 21, exposure: 3011 }, { count: 11, exposure: 800 })!;
    expect(ratio.value).toBeCloseTo(1.971488, 6);
    expect(ratio.low).toBeCloseTo(0.8584264, 6);
    expect(ratio.high).toBeCloseTo(4.2772659, 6);
  });

  it('is open where one side counted nothing', () => {
    expect(rateRatio({ count: 0, exposure: 1 }, { count: 3, exposure: 1 })).toMatchObject({ value: null, high: null });
    expect(rateRatio({ count: 3, exposure: 1 }, { count: 0, exposure: 1 })).toMatchObject({ value: 0, low: 0 });
    expect(rateRatio({ count: 0, exposure: 1 }, { count: 0, exposure: 2 })).toBeNull();
  });
});

describe('the log-linear trend of counts', () => {
  /*
   * Satellites of horseshoe crabs by carapace width in eight groups: A. Agresti, An Introduction to Categorical Data Analysis
   * (2007), 3.3, from memory; the groups add up to the 173 crabs and 505 satellites of the study. Printed there:
   * ln(rate) = −3.535 + 0.173·width, standard error 0.021, X² = 6.2 with 6 degrees of freedom.
   */
  const widths = [22.69, 23.84, 24.77, 25.84, 26.79, 27.74, 28.67, 30.41];
  const crabs = [14, 14, 28, 39, 22, 24, 18, 14];
  const satellites = [14, 20, 67, 105, 63, 93, 71, 72];
  const trend = countTrend(widths.map((x, index) => ({ x, exposure: crabs[index]!, count: satellites[index]! })))!;

  it('agrees with the published fit', () => {
    expect(trend.slope).toBeCloseTo(0.173, 3);
    expect(Math.log(trend.rateAt!(0))).toBeCloseTo(-3.535, 3);
    expect((trend.high - trend.low) / (2 * 1.959964 * Math.sqrt(trend.dispersion))).toBeCloseTo(0.021, 3);
    expect(trend.dispersion * 6).toBeCloseTo(6.2, 1);
  });

  it('agrees with an independent maximisation and profile (general-purpose scientific library)', () => {
    expect(trend.slope).toBeCloseTo(0.17271921, 6);
    expect(trend.low).toBeCloseTo(0.13026095, 6);
    expect(trend.high).toBeCloseTo(0.2152050213, 6);
    expect(trend.fitP).toBeCloseTo(0.3960978, 6);
  });

  it('of two places is the ratio of their rates', () => {
    const two = countTrend([{ x: 0, exposure: 2, count: 4 }, { x: 10, exposure: 1, count: 8 }])!;
    expect(Math.exp(10 * two.slope)).toBeCloseTo(4, 9);
    expect(two.fitP).toBeNull();
  });

  it('is open where everything was counted at one end', () => {
    const up = countTrend([{ x: 0, exposure: 1, count: 0 }, { x: 50, exposure: 1, count: 0 }, { x: 100, exposure: 1, count: 9 }])!;
    expect(up).toMatchObject({ slope: Infinity, high: Infinity, rateAt: null });
    // By definition of the profile: 2·9·ln(1 + e^(−b/2) + e^(−b)) = 3.841459
    expect(2 * 9 * Math.log(1 + Math.exp(-50 * up.low) + Math.exp(-100 * up.low))).toBeCloseTo(3.841459, 5);
    const down = countTrend([{ x: 0, exposure: 1, count: 9 }, { x: 100, exposure: 1, count: 0 }])!;
    expect(down).toMatchObject({ slope: -Infinity, low: -Infinity });
    expect(down.high).toBeLessThan(0);
  });

  it('is none where nothing was counted or x does not change', () => {
    expect(countTrend([{ x: 0, exposure: 1, count: 0 }, { x: 1, exposure: 1, count: 0 }])).toBeNull();
    expect(countTrend([{ x: 1, exposure: 1, count: 4 }, { x: 1, exposure: 1, count: 2 }])).toBeNull();
  });
});
