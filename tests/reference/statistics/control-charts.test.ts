import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { nearerIndex, spreadIndex, targetIndex } from '../../../shared-lib/statistics/capability.ts';
import { chartConstants } from '../../../shared-lib/statistics/chart-constants.ts';
import { controlChartCalculation } from '../../../shared-lib/statistics/control-chart.calculation.ts';
import reference from './control-charts.json';
import { lre, worstLre } from './lre.ts';

describe('constants of control charts', () => {
  it.each(Object.entries(reference.constants.by_n))('n = %s, computed anew against quadrature at full precision', (n, expected) => {
    const { d2, d3, c4 } = chartConstants(Number(n));
    expect(worstLre([d2, c4], [expected.d2, expected.c4])).toBeGreaterThan(10);
    expect(lre(d3, expected.d3)).toBeGreaterThan(9);
  });

  it('limits of a chart of means and ranges are A2, D3 and D4 times the mean range', () => {
    const subgroups = [[10.2, 9.9, 10.4, 10, 10.1], [9.8, 10.3, 10, 10.2, 9.7], [10.1, 10.6, 9.9, 10.3, 10.2]];
    const { A2, D3, D4, A3, B3, B4 } = reference.constants.by_n['5'];
    const { results } = runCalculation(controlChartCalculation, { subgroups });
    const range = results.rangeCentre!.value!;
    expect(range).toBeCloseTo((0.5 + 0.6 + 0.7) / 3, 12);
    expect(lre(results.upper!.value! - results.centre!.value!, A2 * range)).toBeGreaterThan(9);
    expect(lre(results.rangeUpper!.value, D4 * range)).toBeGreaterThan(9);
    expect(results.rangeLower!.value).toBe(D3 * range);
    const bySd = runCalculation(controlChartCalculation, { subgroups, chart: 'xbar-s' }).results;
    const sd = bySd.sdCentre!.value!;
    expect(lre(bySd.upper!.value! - bySd.centre!.value!, A3 * sd)).toBeGreaterThan(9);
    expect(lre(bySd.sdUpper!.value, B4 * sd)).toBeGreaterThan(9);
    expect(bySd.sdLower!.value).toBe(B3 * sd);
  });

  it('individuals: flow rates of e-Handbook 6.3.2.2', () => {
    const { x, mean, mr_bar, ucl_exact_d2, lcl_exact_d2, printed } = reference.individuals;
    const { results } = runCalculation(controlChartCalculation, { values: x });
    expect(worstLre([results.centre, results.rangeCentre, results.upper, results.lower].map((value) => value!.value), [mean, mr_bar, ucl_exact_d2, lcl_exact_d2])).toBeGreaterThan(10);
    // Printed with d2 rounded to 1.128: 0.002 off.
    expect(Math.abs(results.upper!.value! - printed.ucl)).toBeLessThan(0.003);
    expect(Math.abs(results.lower!.value! - printed.lcl)).toBeLessThan(0.003);
  });
});

describe('capability', () => {
  it('e-Handbook 6.1.6: Cp 1, Cpk 0.6667, Cpm 0.7071', () => {
    const { LSL, USL, T, mean, s, Cp, Cpk, Cpm, Cp_ci95_n50, Cpk_ci95_n50 } = reference.capability.nist_6_1_6;
    const cp = spreadIndex(LSL, USL, s, 49, 0.95);
    expect(cp.value).toBeCloseTo(Cp, 12);
    expect(worstLre([cp.low, cp.high], Cp_ci95_n50)).toBeGreaterThan(9);
    const cpk = nearerIndex(LSL, USL, mean, s, 50, 49, 0.95);
    expect(cpk.value).toBeCloseTo(Cpk, 12);
    expect(worstLre([cpk.low, cpk.high], Cpk_ci95_n50)).toBeGreaterThan(9);
    expect(targetIndex(LSL, USL, T, mean, s, 50, 0.95).value).toBeCloseTo(Cpm, 12);
  });

  it('Montgomery’s intervals: 1.57 to 3.01 for Cp, 0.88 to 1.78 for Cpk', () => {
    const { USL, LSL, s, n, Cp, ci95 } = reference.capability.montgomery_cp;
    const cp = spreadIndex(LSL, USL, s, n - 1, 0.95);
    expect(lre(cp.value, Cp)).toBeGreaterThan(12);
    expect(worstLre([cp.low, cp.high], ci95)).toBeGreaterThan(9);
    const { Cpk, ci95: ends } = reference.capability.montgomery_cpk;
    const cpk = nearerIndex(0, null, 3 * Cpk, 1, 20, 19, 0.95);
    expect(worstLre([cpk.low, cpk.high], ends)).toBeGreaterThan(9);
  });
});
