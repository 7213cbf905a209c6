import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { residualSolventCalculation } from '../../../shared-lib/release/residual-solvent.calculation.ts';

const run = (input: unknown) => runCalculation(residualSolventCalculation, input);

/**
 * J. C. Miller, J. N. Miller, Statistics for Analytical Chemistry: fluorescein standards (from memory; the regression
 * reproduces every printed figure). Amounts as µg in the vial, pieces of 1 m² so that 1 µg is 0.001 mg/m².
 */
const amounts = [0, 2, 4, 6, 8, 10, 12];
const areas = [2.1, 5.0, 9.0, 12.6, 17.3, 21.0, 24.7];
const calibration = amounts.map((amount, i) => ({ amount, area: areas[i]! }));
const one = (y: number[]) => run({ calibration, specimens: [{ areas: y, areaM2: 1 }] });

describe('external calibration, textbook example (Miller & Miller, from memory)', () => {
  it('gives slope 1.93 and intercept 1.52', () => {
    const { slope, intercept, residualSd } = one([13.5]).results;
    expect(slope!.value).toBeCloseTo(1.93, 2);
    expect(intercept!.value).toBeCloseTo(1.52, 2);
    // Printed 0.4329 after rounding on the way; within one unit of its last digit.
    expect(Math.abs(residualSd!.value! - 0.4329)).toBeLessThan(1e-4);
    // s(b) 0.0409 and s(a) 0.2950, times t(0.975, 5) = 2.5706 (table of t).
    expect((slope!.high! - slope!.low!) / 2).toBeCloseTo(0.0409 * 2.5706, 3);
    expect((intercept!.high! - intercept!.low!) / 2).toBeCloseTo(0.295 * 2.5706, 3);
  });

  it.each([
    // y0, x0, half-width as printed (95 %, one reading): 6.21 ± 0.62 from the book; 11.13 ± 0.677 computed by its formula.
    [13.5, 6.21, 0.62, 0.01],
    [23.0, 11.13, 0.677, 0.005],
  ])('reads %d off as %d', (y, x, half, tolerance) => {
    const { value, low, high } = one([y]).results.perSquareMetre!;
    expect(Math.abs(1000 * value! - x)).toBeLessThan(0.005);
    expect(Math.abs((1000 * (high! - low!)) / 2 - half)).toBeLessThan(tolerance);
  });

  it('gives 3.3 s/b = 0.740 and 10 s/b = 2.242 (computed by ICH Q2 from the figures of the book)', () => {
    const { detectionLimit, quantificationLimit } = one([13.5]).results;
    expect(detectionLimit!.value).toBeCloseTo(0.74, 3);
    expect(quantificationLimit!.value).toBeCloseTo(2.242, 3);
    expect(detectionLimit!.unit).toBe('µg');
  });

  it('gives 3.3 s(a)/b = 0.504 by the scatter of the intercept (computed: 3.3 × 0.2950 / 1.93)', () => {
    const { results } = run({ calibration, specimens: [{ areas: [13.5], areaM2: 1 }], sigma: 'intercept' });
    expect(results.detectionLimit!.value).toBeCloseTo((3.3 * 0.295) / 1.93, 2);
  });

  it('takes 2.9, read off as 0.72, for not detected: it lies below 0.740', () => {
    expect(one([2.9]).results.perSquareMetre).toMatchObject({ bound: 'at-most', low: null, high: null });
    expect(1000 * one([2.9]).results.perSquareMetre!.value!).toBeCloseTo(0.74, 3);
  });
});

describe('NIST StRD Norris as a calibration (certified)', () => {
  const x = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5];
  const y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2];

  it('reaches the certified coefficients', () => {
    const { results } = run({ calibration: x.map((amount, i) => ({ amount, area: y[i]! })), specimens: [{ areas: [500], areaM2: 0.01 }] });
    expect(results.slope!.value).toBeCloseTo(1.00211681802045, 12);
    expect(results.intercept!.value).toBeCloseTo(-0.262323073774029, 11);
    expect(results.residualSd!.value).toBeCloseTo(0.884796396144373, 11);
  });
});

describe('multiple headspace extraction', () => {
  const headspace = { sampleAreas: [10000, 6000, 3600, 2160], standardAreas: [8000, 4800, 2880, 1728], standardUg: 10 };

  it('adds a geometric series up to A₁/(1 − Q): 25000 and 20000, so 12.5 µg or 1.25 mg/m² (arithmetic)', () => {
    const { results } = run({ headspace, specimens: [{ areaM2: 0.01 }] });
    expect(results.quotient!.value).toBeCloseTo(0.6, 12);
    expect(results.amountUg!.value).toBeCloseTo(12.5, 10);
    expect(results.perSquareMetre!.value).toBeCloseTo(1.25, 10);
  });

  it('two steps: A₁²/(A₁ − A₂) (B. Kolb, L. S. Ettre, from memory)', () => {
    const { results } = run({ headspace: { sampleAreas: [10000, 6000], standardAreas: [8000, 4800], standardUg: 10, areaM2: 0.01 } });
    expect(results.amountUg!.value).toBeCloseTo((10 * (10000 ** 2 / 4000)) / (8000 ** 2 / 3200), 10);
    expect(results.amountUg).toMatchObject({ low: null, high: null });
  });

  it('takes the first area of the fitted line: 10050 5980 3620 2150 → Q 0.59880, ΣA 25016.1 (computed independently)', () => {
    const { results } = run({ headspace: { ...headspace, sampleAreas: [10050, 5980, 3620, 2150] }, specimens: [{ areaM2: 0.01 }] });
    expect(results.quotient!.value).toBeCloseTo(0.5988, 5);
    expect((results.amountUg!.value! / 10) * 20000).toBeCloseTo(25016.1, 1);
  });
});
